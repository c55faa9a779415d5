import * as z from 'zod/mini'
import { cautionId } from './ids.ts'

const sentences = z.string().check(z.minLength(1), z.maxLength(2000))

/**
 * A caution in the laboratory's own words, a sentence on each line. It stands alone, or is added to a card of the app; it never takes the place of one.
 */
export const ownCaution = z.strictObject({
  id: cautionId,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  /** The card of the app to which these words are added. */
  addsTo: z.optional(z.string()),
  /** Raised with every change, when the plan is signed; the record keeps which version was read. */
  version: z.int().check(z.minimum(1)),
  /** UN GHS codes as text, as the safety data sheet has them: `GHS05 H314 P280`. */
  hazards: z.optional(z.string().check(z.maxLength(300))),
  never: sentences,
  wear: z.optional(sentences),
  ventilation: z.optional(sentences),
  firstAid: z.optional(sentences),
  spill: z.optional(sentences),
})
export type OwnCaution = z.infer<typeof ownCaution>
