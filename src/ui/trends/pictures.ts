import type { Limits } from '../../plan/limits.ts'
import type { Charted } from '../../projections/control-chart.ts'
import type { Forecast } from '../../projections/forecast.ts'
import type { SeriesPoint } from '../../projections/series.ts'
import { above } from '../../science/decimal.ts'
import type { ChartLimit, ChartPicture } from './control-chart.tsx'

export const pictureNames = ['readings', 'range', 'average', 'sums'] as const
export type PictureName = (typeof pictureNames)[number]

export interface Analysis {
  charted: Charted
  /** Of a very long series only the newest are analysed: index of the first of them. */
  offset: number
}

interface PicturesAsked {
  points: readonly SeriesPoint[]
  limits: Limits
  /** Which lines the readings lie between. */
  by: 'plan' | 'computed'
  analysis: Analysis | undefined
  forecast: Forecast | undefined
}

export const planLines = (limits: Limits): ChartLimit[] =>
  (
    [['action', limits.actionHigh], ['warning', limits.warningHigh], ['aim', limits.aim], ['warning', limits.warningLow], ['action', limits.actionLow]] as const
  ).flatMap(([kind, at]) => (at === undefined ? [] : [{ kind, at }]))

/** The four charts of one series. Range, average and sums only where there is an analysis. */
export const chartPicture = (name: PictureName, asked: PicturesAsked): ChartPicture => {
  const { points, limits, by, analysis, forecast } = asked
  const times = Float64Array.from(points, ({ time }) => time)
  const last = points.at(-1)
  if (name === 'readings' || !analysis)
    return {
      times,
      lines: [{ values: Float64Array.from(points, ({ value }) => value), kind: 'main' }],
      limits: by === 'plan' || !analysis ? planLines(limits) : [{ kind: 'computed', at: analysis.charted.upper }, { kind: 'aim', at: analysis.charted.centre }, { kind: 'computed', at: analysis.charted.lower }],
      verdictAt: (index) => points[index]!.verdict,
      flags: analysis ? flagsOf(analysis) : [],
      ahead: forecast && last ? { from: [last.time, last.value], limit: forecast.limit, at: forecast.at, earliest: forecast.earliest, latest: forecast.latest } : undefined,
    }
  const { charted, offset } = analysis
  /** As long as the series, so that an index means the same reading in each chart. */
  const whole = (values: readonly (number | null)[]): Float64Array => {
    const list = new Float64Array(points.length).fill(Number.NaN)
    values.forEach((value, index) => {
      if (value !== null) list[index + offset] = value
    })
    return list
  }
  if (name === 'range') {
    const values = whole(charted.ranges)
    return {
      times, lines: [{ values, kind: 'main' }], limits: [{ kind: 'computed', at: charted.rangeUpper }, { kind: 'aim', at: 0 }],
      verdictAt: (index) => (above(values[index]!, charted.rangeUpper) ? 'ACT' : 'IN'), flags: [],
    }
  }
  if (name === 'average') {
    const out = new Set(charted.ewma.out.map((index) => index + offset))
    return {
      times,
      lines: [{ values: whole(charted.ewma.values), kind: 'main' }, { values: whole(charted.ewma.upper), kind: 'limit' }, { values: whole(charted.ewma.lower), kind: 'limit' }],
      limits: [{ kind: 'aim', at: charted.centre }], verdictAt: (index) => (out.has(index) ? 'ACT' : 'IN'), flags: [],
    }
  }
  const high = whole(charted.cusum.high)
  const low = whole(charted.cusum.low.map((value) => -value))
  return {
    times, lines: [{ values: high, kind: 'main' }, { values: low, kind: 'second' }],
    limits: [{ kind: 'computed', at: charted.cusum.limit }, { kind: 'aim', at: 0 }, { kind: 'computed', at: -charted.cusum.limit }],
    verdictAt: (index, line) => (above(line === 0 ? high[index]! : -low[index]!, charted.cusum.limit) ? 'ACT' : 'IN'), flags: [],
  }
}

/** Rules of one point together: `2 · 5`. */
const flagsOf = ({ charted, offset }: Analysis): ChartPicture['flags'] => {
  const byIndex = new Map<number, number[]>()
  for (const { index, rule } of charted.flags) byIndex.set(index + offset, [...(byIndex.get(index + offset) ?? []), rule])
  return [...byIndex].sort(([a], [b]) => a - b).map(([index, rules]) => ({ index, what: rules.join(' · ') }))
}

/** Rules that a reading completes, and the charts on which it signals. */
export const signalsAt = (analysis: Analysis | undefined, index: number): { rules: number[]; average: boolean; sums: boolean; range: boolean } => {
  if (!analysis) return { rules: [], average: false, sums: false, range: false }
  const { charted, offset } = analysis
  const at = index - offset
  const range = charted.ranges[at]
  return {
    rules: charted.flags.filter((flag) => flag.index === at).map(({ rule }) => rule),
    average: charted.ewma.out.includes(at),
    sums: charted.cusum.out.includes(at),
    range: typeof range === 'number' && above(range, charted.rangeUpper),
  }
}
