import * as z from 'zod/mini'
import { head } from '../record/kinds/sign-off.ts'

/** What a phone tells of itself after each exchange: what waits on it, how its clock stands, whether its storage will stay. */
export const reportRequest = z.strictObject({
  /** Entries not yet acknowledged, and the phone's corrected time of the oldest (milliseconds since 1970). */
  waiting: z.int().check(z.minimum(0)),
  oldestWaitingAt: z.nullable(z.number()),
  waitingBlobs: z.int().check(z.minimum(0)),
  skew: z.nullable(z.strictObject({ ms: z.int(), within: z.int() })),
  /** Answer of `navigator.storage.persisted()`; null where the browser does not tell. */
  persisted: z.nullable(z.boolean()),
  storage: z.optional(z.strictObject({ usedBytes: z.number(), quotaBytes: z.number() })),
  installed: z.optional(z.boolean()),
  app: z.string().check(z.maxLength(40)),
  /** The highest head it has seen: the server's own record must reach at least there, by the same chain. */
  witness: z.nullable(head),
})
export type ReportRequest = z.infer<typeof reportRequest>

/** `behind`: the server's record ends before the witnessed head; `other`: it has another chain there. Both are kept in the server's log. */
export const reportAnswer = z.strictObject({ witness: z.enum(['none', 'agrees', 'behind', 'other', 'otherEpoch', 'forged']), serverTime: z.number(), head })
export type ReportAnswer = z.infer<typeof reportAnswer>
