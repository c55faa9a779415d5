import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** A processed control strip and its densities. */
export const strip = z.strictObject({
  check: checkId,
  plan: entryId,
  batch: z.optional(z.string()),
  /** When the strip went in. When it was read is the time of the entry. */
  stripIn: z.optional(instantText),
  /** The middle of its time in the developer: the bath for which it speaks. From path and speed as they were known when it was keyed. */
  bathTime: z.optional(instantText),
  /** Density by step name, as keyed. */
  densities: z.record(z.string(), z.strictObject({ value: z.number(), keyed: z.string() })),
  /** Relative log exposure by step name, where the steps are a wedge. */
  logExposures: z.optional(z.record(z.string(), z.number())),
  /** Figures worked out of the densities, with the definition of gamma that was used. */
  figures: z.record(z.string(), z.number()),
  gammaDefinition: z.optional(z.string()),
  /** Figures of the batch's aims, about which the limits lay. */
  aims: z.optional(z.record(z.string(), z.number())),
  /** Where the densities come from, where they were not keyed: a file of the densitometer, or pasted text. */
  from: z.optional(z.enum(['file', 'pasted'])),
  verdict: z.enum(['IN', 'WARN', 'ACT']),
  /** When it was read, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
  repeatOf: z.optional(entryId),
  round: z.optional(z.string()),
  atTank: z.optional(z.boolean()),
  /** Seconds spent at the station. */
  stationSeconds: z.optional(z.number()),
})
export type Strip = z.infer<typeof strip>
