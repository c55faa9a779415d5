import * as z from 'zod/mini'
import { machineId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** Production film kept off a machine. */
export const hold = z.strictObject({
  machine: machineId,
  reason: z.string().check(z.minLength(1), z.maxLength(500)),
  exception: z.optional(entryId),
  /** Film run since the last good check: every roll of it is tagged. */
  filmAtRiskMetres: z.optional(z.number()),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Hold = z.infer<typeof hold>

export const release = z.strictObject({
  hold: entryId,
  reason: z.string().check(z.minLength(1), z.maxLength(500)),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Release = z.infer<typeof release>
