import type { Check } from '../plan/check.ts'
import type { Limits } from '../plan/limits.ts'
import { chartCusum } from '../science/chart/cusum.ts'
import { chartEwma } from '../science/chart/ewma.ts'
import { chartIndividuals, movingRanges } from '../science/chart/individuals.ts'
import { chartRules } from '../science/chart/rules.ts'
import { resultOf } from '../science/evaluate.ts'

/** Fewer readings say nothing of the process. Common practice, no source. */
export const fewestForLimits = 8
/** Readings that set computed limits: 20 or more (ISO 7870-2). */
export const baselineLength = 25
/** As many as the calculations take at once; of a longer series the newest. */
export const mostAnalysed = 10_000

/** A tank that empties and a filter that fills run from one end to the other by nature: no rule of a level process speaks of them. */
export const staysLevel = (check: Check): boolean => check.kind !== 'reading' || !['volume', 'pressureDrop', 'footage'].includes(check.quantity)

const ewmaLambda = 0.2 // 0.2 to 0.3 is usual, NIST/SEMATECH e-Handbook 6.3.2.4
const cusumK = 0.5 // sigmas, half the shift to be found; e-Handbook 6.3.2.3
const cusumH = 5 // sigmas; 4 to 5 are usual, e-Handbook 6.3.2.3

export interface ChartAsked {
  values: readonly number[]
  gapsBefore: readonly number[]
  /** `plan`: the plan's aim is the centre; `computed`: the mean of the baseline is. Sigma comes from the baseline either way. */
  limits: { by: 'plan'; plan: Limits } | { by: 'computed' }
  /** First reading of the baseline; the first that are given, where none is named. */
  baselineFrom?: number | undefined
}

export interface RuleFlag {
  index: number
  rule: number
}

export interface Charted {
  centre: number
  sigma: number
  /** centre ± 3 sigma, and the upper limit of the moving range. */
  lower: number
  upper: number
  rangeUpper: number
  ranges: readonly (number | null)[]
  /** Readings that the limits were set by. */
  baseline: { from: number; count: number }
  flags: readonly RuleFlag[]
  ewma: { values: readonly number[]; lower: readonly number[]; upper: readonly number[]; out: readonly number[] }
  cusum: { high: readonly number[]; low: readonly number[]; limit: number; out: readonly number[] }
}

/**
 * Individuals and moving range, EWMA and CUSUM of a series, by the calculations that Bench shows. Limits are frozen from a named baseline and not
 * worked out anew with each reading. Undefined where there are too few readings, or all are equal: then nothing can be said.
 */
export const controlChart = ({ values, gapsBefore, limits, baselineFrom = 0 }: ChartAsked): Charted | undefined => {
  const from = Math.min(baselineFrom, Math.max(0, values.length - fewestForLimits))
  const base = values.slice(from, from + baselineLength)
  if (base.length < fewestForLimits || values.length > mostAnalysed) return undefined
  const gapsIn = gapsBefore.filter((index) => index > from && index < from + base.length).map((index) => index - from)
  if (gapsIn.length >= base.length - 1) return undefined
  const { centre: mean, sigma, movingRangeUpper } = resultOf(chartIndividuals, { values: base, gapsBefore: gapsIn })
  if (!(sigma > 0)) return undefined
  const centre = limits.by === 'plan' ? limits.plan.aim : mean
  const list = [...values]
  const gaps = [...gapsBefore]
  const { ewma, exactLower, exactUpper, exactOut } = resultOf(chartEwma, { values: list, target: centre, sigma, lambda: ewmaLambda })
  const { high, low, out } = resultOf(chartCusum, { values: list, target: centre, k: cusumK * sigma, h: cusumH * sigma })
  return {
    centre, sigma, lower: centre - 3 * sigma, upper: centre + 3 * sigma, rangeUpper: movingRangeUpper, ranges: movingRanges(values, gapsBefore), baseline: { from, count: base.length },
    flags: resultOf(chartRules, { values: list, centre, sigma, gapsBefore: gaps }).flags,
    ewma: { values: ewma, lower: exactLower, upper: exactUpper, out: exactOut },
    cusum: { high, low, limit: cusumH * sigma, out },
  }
}
