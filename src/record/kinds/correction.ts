import * as z from 'zod/mini'
import { entryId, instantText } from '../ids.ts'

/** Replaces the data of an earlier entry of the same person or by a supervisor; the old one stays readable. */
export const amend = z.strictObject({
  ref: entryId,
  /** The whole corrected data of that entry's kind. */
  data: z.record(z.string(), z.unknown()),
  why: z.string().check(z.minLength(1), z.maxLength(500)),
})
export type Amend = z.infer<typeof amend>

export const withdraw = z.strictObject({ ref: entryId, why: z.string().check(z.minLength(1), z.maxLength(500)) })
export type Withdraw = z.infer<typeof withdraw>

/** Ends an exception otherwise than by a reading in limits: the bath was replaced, the instrument was at fault. */
export const close = z.strictObject({
  exception: entryId,
  reason: z.enum(['bathReplaced', 'instrumentFault', 'sampleFault', 'machineStopped', 'handedOver', 'other']),
  remark: z.optional(z.string().check(z.maxLength(500))),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Close = z.infer<typeof close>
