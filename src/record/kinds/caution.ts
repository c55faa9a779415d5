import * as z from 'zod/mini'
import { materialId, stationId } from '../../plan/ids.ts'
import { entryId } from '../ids.ts'

/** A caution card read and confirmed by a deliberate hold, before an amount was shown. */
export const caution = z.strictObject({
  card: z.string(),
  version: z.number(),
  material: z.optional(materialId),
  station: z.optional(stationId),
  exception: z.optional(entryId),
  /** Keys of the lines that were held to confirm. */
  lines: z.array(z.string()).check(z.minLength(1)),
})
export type Caution = z.infer<typeof caution>
