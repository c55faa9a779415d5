import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { instantText } from '../ids.ts'

export const skipReason = z.enum(['machineStopped', 'instrumentFault', 'noAccess', 'darkWork', 'sampleLost', 'otherWork', 'noStaff', 'other'])

/** A check that was not done, and why: an honest gap instead of an invented number. */
export const skip = z.strictObject({
  check: checkId,
  /** The instant at which it was due, in milliseconds since 1970. */
  due: z.number(),
  reason: skipReason,
  remark: z.optional(z.string().check(z.maxLength(500))),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
  round: z.optional(z.string()),
})
export type Skip = z.infer<typeof skip>
