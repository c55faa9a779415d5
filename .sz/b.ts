import { pushAnswer, receipt, refusal } from '../src/wire/messages.ts'
import { kept } from '../src/device/kept.ts'
export const x = (r: unknown) => [kept.safeParse(r), pushAnswer.safeParse(r), receipt.safeParse(r), refusal.safeParse(r)]
