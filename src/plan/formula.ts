import * as z from 'zod/mini'
import { formulaId, materialId, stationId } from './ids.ts'
import { limits } from './limits.ts'

/** What a laboratory mixes by itself: per litre, in the order in which it is usually written. The sheet puts it into a safe order. */
export const formula = z.strictObject({
  id: formulaId,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  /** The station whose bath it is, or that it feeds. */
  for: stationId,
  /** Usual batch. */
  litres: z.number().check(z.gt(0)),
  startWaterFraction: z.optional(z.number().check(z.gt(0), z.maximum(1))),
  /** Of the water at the start. */
  startCelsius: z.optional(z.number()),
  steps: z.array(
    z.strictObject({
      substance: z.string(),
      /** What stands on the shelf, where it is not the pure substance: acetic acid as its 28 % solution. */
      material: z.optional(materialId),
      form: z.optional(z.string()),
      gramsPerLitre: z.optional(z.number().check(z.gt(0))),
      millilitresPerLitre: z.optional(z.number().check(z.gt(0))),
    }),
  ).check(z.minLength(1)),
  /** Limits of the new mix, where they are not those of the bath: a replenisher is stronger. */
  limits: z.optional(z.strictObject({ pH: limits, specificGravity: limits })),
  setBy: z.string(),
})
export type Formula = z.infer<typeof formula>
