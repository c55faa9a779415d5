import * as z from 'zod/mini'
import { machineId } from '../../plan/ids.ts'
import { entryId } from '../ids.ts'

/** Production film kept off a machine. */
export const hold = z.strictObject({
  machine: machineId,
  reason: z.string().check(z.minLength(1), z.maxLength(500)),
  exception: z.optional(entryId),
  /** Film run since the last good check: every roll of it is tagged. */
  filmAtRiskMetres: z.optional(z.number()),
})
export type Hold = z.infer<typeof hold>

export const release = z.strictObject({
  hold: entryId,
  reason: z.string().check(z.minLength(1), z.maxLength(500)),
})
export type Release = z.infer<typeof release>
