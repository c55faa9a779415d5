import * as z from 'zod/mini'
import { entryId, instantText } from '../ids.ts'

/** A supervisor has taken note of an incident: what was done about it, or will be. It is under their name that it counts as seen. */
export const acknowledge = z.strictObject({
  of: entryId,
  remark: z.string().check(z.minLength(1), z.maxLength(1000)),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Acknowledge = z.infer<typeof acknowledge>
