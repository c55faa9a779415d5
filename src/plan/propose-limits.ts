import { chartIndividuals } from '../science/chart/individuals.ts'
import { resultOf } from '../science/evaluate.ts'
import { tidy } from '../science/decimal.ts'
import type { Limits } from './limits.ts'

/** Fewer readings say nothing of the process. Common practice, no source. */
export const fewestForProposal = 8
/** From here on limits are worth setting (ISO 7870-2: 20 or more). */
export const enoughForProposal = 20

export interface LimitsProposed {
  limits: Limits
  count: number
  mean: number
  /** Mean moving range ÷ 1.128. */
  sigma: number
  /** How many of these readings lie beyond the proposed action limits: a cause to be found before the limits are taken. */
  beyond: number
}

/**
 * Aim and limits from readings: warning limits two sigma from the centre, action limits three (ISO 7870-2), sigma from the moving range as on the chart
 * of individuals, so that a slow drift does not widen them. The centre is the mean, or the aim where that is to stay. Values are written in steps of
 * the instrument, limits at least one step apart; a side that is open today stays open: sulfite has no upper limit.
 *
 * Undefined where there are too few readings, or all are equal. It says what the process does, not what the film allows.
 */
export const proposeLimits = (given: { values: readonly number[]; gapsBefore?: readonly number[]; step: number; now: Limits; about: 'mean' | 'aim' }): LimitsProposed | undefined => {
  const { values, gapsBefore = [], step, now, about } = given
  if (values.length < fewestForProposal || gapsBefore.length >= values.length - 1) return undefined
  const { centre: mean, sigma } = resultOf(chartIndividuals, { values: [...values], gapsBefore: [...gapsBefore] })
  if (!(sigma > 0)) return undefined
  const inSteps = (value: number): number => tidy(Math.round(value / step) * step)
  const aim = about === 'aim' ? now.aim : inSteps(mean)
  const warning = Math.max(step, inSteps(2 * sigma))
  const action = Math.max(tidy(warning + step), inSteps(3 * sigma))
  const hasLow = now.warningLow !== undefined || now.actionLow !== undefined
  const hasHigh = now.warningHigh !== undefined || now.actionHigh !== undefined
  // A reading that had only an aim gets both sides.
  const low = hasLow || !hasHigh
  const high = hasHigh || !hasLow
  const limits: Limits = {
    aim,
    ...(low ? { warningLow: tidy(aim - warning), actionLow: tidy(aim - action) } : {}),
    ...(high ? { warningHigh: tidy(aim + warning), actionHigh: tidy(aim + action) } : {}),
  }
  const beyond = values.filter((value) => (limits.actionLow !== undefined && value < limits.actionLow) || (limits.actionHigh !== undefined && value > limits.actionHigh)).length
  return { limits, count: values.length, mean, sigma, beyond }
}
