import * as z from 'zod/mini'
import { timer } from '../../rounds/timer.ts'

/** A check half done: what is keyed, how long the instrument settles still, since when somebody stands there. */
export const half = z.strictObject({
  keyed: z.string(),
  settling: z.optional(timer),
  stationSince: z.number(),
  atTank: z.boolean(),
})
export type Half = z.infer<typeof half>

export const halfKey = (check: string): string => `check:${check}`
export const freshHalf = (now: number): Half => ({ keyed: '', stationSince: now, atTank: false })
