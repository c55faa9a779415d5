import * as z from 'zod/mini'
const s = z.strictObject({ a: z.string(), b: z.int(), c: z.array(z.string()), d: z.optional(z.string()) })
export const x = (r: unknown) => s.safeParse(r)
