import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { instantText } from '../ids.ts'

const densities = z.record(z.string(), z.number())

/** A batch of control strips comes into use: its aims, read on this laboratory's own densitometer, and how they were found. */
export const stripBatch = z.strictObject({
  check: checkId,
  batch: z.string().check(z.minLength(1), z.maxLength(40)),
  /** Aim by step: reference strip plus correction, or carried over from the batch before. */
  aims: densities,
  /** Densities of the reference strip, and the corrections printed for the batch. */
  reference: z.optional(densities),
  correction: z.optional(densities),
  /** Old and new strips processed together, three of each or more: the new aims carry on the old ones, whatever the process does that day. */
  crossover: z.optional(z.strictObject({ from: z.string(), old: z.array(densities).check(z.minLength(3)), new: z.array(densities).check(z.minLength(3)) })),
  remark: z.optional(z.string().check(z.maxLength(500))),
  notedAt: z.optional(instantText),
})
export type StripBatch = z.infer<typeof stripBatch>
