import * as z from 'zod/mini'

/** What stood on the shelf of a material when it was last counted. What was poured and mixed since is in the record and is taken off. */
export const stock = z.strictObject({
  amount: z.number().check(z.minimum(0)),
  /** Litres of a liquid, kilograms of a solid. */
  unit: z.enum(['L', 'kg']),
  /** Instant, as the phone writes it. */
  countedAt: z.string().check(z.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d/)),
  lot: z.optional(z.string().check(z.minLength(1), z.maxLength(60))),
  /** The last day on which it may be used. */
  expires: z.optional(z.string().check(z.regex(/^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/))),
  /** At or below this more is to be ordered. */
  least: z.optional(z.number().check(z.minimum(0))),
})
export type Stock = z.infer<typeof stock>
