import * as z from 'zod/mini'
import { above, below, tidy } from '../science/decimal.ts'

/**
 * Aim, warning and action limits of a reading, as in control-chart practice (ISO 7870). A side that is absent is open:
 * sulfite has no upper limit, silver no lower one. A value exactly on a limit is inside it, decided on the decimal values.
 */
export const limits = z.strictObject({
  aim: z.number(),
  warningLow: z.optional(z.number()),
  warningHigh: z.optional(z.number()),
  actionLow: z.optional(z.number()),
  actionHigh: z.optional(z.number()),
})
export type Limits = z.infer<typeof limits>

/** The same limits about another aim: each keeps its distance. */
export const limitsAbout = (given: Limits, aim: number): Limits => {
  const moved: Limits = { aim }
  for (const side of ['warningLow', 'warningHigh', 'actionLow', 'actionHigh'] as const) {
    const at = given[side]
    if (at !== undefined) moved[side] = tidy(at - given.aim + aim)
  }
  return moved
}

export type Verdict = 'IN' | 'WARN' | 'ACT'

export interface Judged {
  verdict: Verdict
  /** On which side of the aim the value lies. */
  side: 'low' | 'high' | 'onAim'
}

export const judge = (given: Limits, value: number): Judged => {
  const side = above(value, given.aim) ? 'high' : below(value, given.aim) ? 'low' : 'onAim'
  const outside = (low: number | undefined, high: number | undefined): boolean =>
    (low !== undefined && below(value, low)) || (high !== undefined && above(value, high))
  if (outside(given.actionLow, given.actionHigh)) return { verdict: 'ACT', side }
  if (outside(given.warningLow, given.warningHigh)) return { verdict: 'WARN', side }
  return { verdict: 'IN', side }
}
