import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** A processed control strip and its densities. */
export const strip = z.strictObject({
  check: checkId,
  plan: entryId,
  batch: z.optional(z.string()),
  /** When the strip went in, and when it was read; the bath time it speaks for follows from path and speed. */
  stripIn: z.optional(instantText),
  /** Density by step name, as keyed. */
  densities: z.record(z.string(), z.strictObject({ value: z.number(), keyed: z.string() })),
  /** Relative log exposure by step name, where the steps are a wedge. */
  logExposures: z.optional(z.record(z.string(), z.number())),
  /** Figures worked out of the densities, with the definition of gamma that was used. */
  figures: z.record(z.string(), z.number()),
  gammaDefinition: z.optional(z.string()),
  verdict: z.enum(['IN', 'WARN', 'ACT']),
  /** When it was read, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
  repeatOf: z.optional(entryId),
  round: z.optional(z.string()),
})
export type Strip = z.infer<typeof strip>
  atTank: z.optional(z.boolean()),
  /** Seconds spent at the station. */
  stationSeconds: z.optional(z.number()),
