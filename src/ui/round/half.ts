import * as z from 'zod/mini'

/** A check half done: what is keyed, since when the instrument settles, since when somebody stands there. */
export const half = z.strictObject({
  keyed: z.string(),
  settlingSince: z.optional(z.number()),
  stationSince: z.number(),
  atTank: z.boolean(),
})
export type Half = z.infer<typeof half>

export const halfKey = (check: string): string => `check:${check}`
export const freshHalf = (now: number): Half => ({ keyed: '', stationSince: now, atTank: false })
