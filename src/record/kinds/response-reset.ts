import * as z from 'zod/mini'
import { materialId, stationId } from '../../plan/ids.ts'
import { instantText } from '../ids.ts'

/** What was learned of how a bath answers no longer counts, and why. */
export const responseReset = z.strictObject({
  station: stationId,
  /** Absent: every material of this bath. */
  material: z.optional(materialId),
  why: z.string().check(z.minLength(1), z.maxLength(500)),
  notedAt: z.optional(instantText),
})
export type ResponseResetEntry = z.infer<typeof responseReset>
