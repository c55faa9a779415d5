import { kept } from '../src/device/kept.ts'
export const x = (r: unknown) => kept.safeParse(r)
