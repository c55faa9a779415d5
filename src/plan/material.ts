import * as z from 'zod/mini'
import { materialId, stationId } from './ids.ts'
import { stock } from './stock.ts'

/** How the reagent is kept: what `acidBase.dose` needs to know of it. */
export const strength = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('molar'), molPerLitre: z.number().check(z.gt(0)) }),
  z.strictObject({ kind: z.literal('percent'), percentByMass: z.number().check(z.gt(0), z.maximum(100)), gramsPerMillilitre: z.number().check(z.gt(0)) }),
  z.strictObject({ kind: z.literal('solid'), form: z.string() }),
])

export const material = z.strictObject({
  id: materialId,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  substance: z.string(),
  strength,
  /** `mL` for liquids, `g` for solids. */
  unit: z.enum(['mL', 'g']),
  /** The caution that must be read before an amount is shown. */
  caution: z.string(),
  /** The most that may go into one bath at once, per litre of bath; the planner stages what is more. */
  safeSingleDosePerLitre: z.optional(z.number().check(z.gt(0))),
  /** A second person checks the amount before it is poured. */
  secondPerson: z.optional(z.boolean()),
  /** Stations whose baths it may go into. */
  for: z.array(stationId),
  stock: z.optional(stock),
})
/** What feeds a bath and tops it up. Like water it stands for itself: a mixture of its own, with a card of its own. */
export const replenisherId = materialId.parse('replenisher')

export type Material = z.infer<typeof material>
