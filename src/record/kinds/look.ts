import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** Something looked at: right or not right. */
export const look = z.strictObject({
  check: checkId,
  plan: entryId,
  right: z.boolean(),
  remark: z.optional(z.string().check(z.maxLength(500))),
  notedAt: z.optional(instantText),
  repeatOf: z.optional(entryId),
  recheckOf: z.optional(entryId),
  round: z.optional(z.string()),
  atTank: z.optional(z.boolean()),
  stationSeconds: z.optional(z.number()),
})
export type Look = z.infer<typeof look>
