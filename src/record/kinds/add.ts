import * as z from 'zod/mini'
import { materialId, personId, stationId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

const amount = z.strictObject({ amount: z.number().check(z.minimum(0)), unit: z.enum(['mL', 'L', 'g', 'kg']) })

/** A dose of material into a bath: planned and poured, its lot and its caution; then the mixing time runs. */
export const add = z.strictObject({
  station: stationId,
  /** `water` stands for itself; everything else is a material of the plan. */
  material: z.union([materialId, z.literal('water')]),
  /** The reading that opened the exception which this dose answers. */
  exception: z.optional(entryId),
  /** First, second … portion for this exception. */
  portion: z.number().check(z.minimum(1)),
  planned: z.optional(amount),
  poured: z.extend(amount, { keyed: z.string().check(z.minLength(1), z.maxLength(24)) }),
  lot: z.optional(z.string().check(z.maxLength(60))),
  /** The entry by which the caution was confirmed; a hazardous material without it is a blocker at sign-off. */
  caution: z.optional(entryId),
  secondPerson: z.optional(personId),
  /** Why the suggestion was overruled, where poured differs from planned on purpose. */
  overruled: z.optional(z.string().check(z.maxLength(500))),
  /** What the poured amount went beyond: `aboveSafeSingleDose`, `noHeadroom`. */
  beyond: z.optional(z.array(z.string().check(z.maxLength(40))).check(z.maxLength(4))),
  /** When it was poured, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
  /** Mixing time that starts when it was poured. */
  mixSeconds: z.number().check(z.minimum(0)),
  /** So many re-checks tell the answer; one, where nothing is said. */
  rechecks: z.optional(z.int().check(z.minimum(1), z.maximum(9))),
  /** `toTwice`: what twice the poured amount would have done. With it an answer is read off the bath's own curve, and not off a straight line. */
  predicted: z.optional(z.strictObject({ quantity: z.string(), from: z.number(), to: z.number(), toTwice: z.optional(z.number()) })),
  working: z.optional(z.strictObject({ calculation: z.string(), inputs: z.record(z.string(), z.unknown()), result: z.record(z.string(), z.unknown()) })),
})
export type Add = z.infer<typeof add>
