import type { Check, ReadingCheck } from '../plan/check.ts'
import { judge, type Limits } from '../plan/limits.ts'
import { chartForecast } from '../science/chart/forecast.ts'
import { resultOf } from '../science/evaluate.ts'
import type { SeriesEvent, SeriesPoint } from './series.ts'

/** What a forecast needs of a reading: the marks of a check's state have it, and so have the points of a chart. */
export type Timed = Pick<SeriesPoint, 'time' | 'value'>

export interface Forecast {
  /** What it will meet: a warning or action limit, the limit of a filter, an empty tank. */
  meets: 'warning' | 'action' | 'filter' | 'empty'
  limit: number
  /** Milliseconds since 1970: the line, and the interval in which it meets the limit. */
  at: number
  earliest: number
  latest: number
  /** Readings that it rests on, since the bath was last changed. */
  points: number
}

const hour = 3_600_000
/** A forecast further ahead than this many times what the readings reach back is a guess, and is not given. Common practice, no source. */
const furthestShare = 2
const fewest = 5
const most = 60

/**
 * When a drifting value meets its next limit, from the readings since the last change of its bath: an add, another bath, another batch of strips, a tank
 * filled up. Undefined where it does not drift, or drifts away from every limit.
 */
export const forecastOf = (points: readonly Timed[], events: readonly Pick<SeriesEvent, 'kind' | 'time'>[], check: Check, limits: Limits): Forecast | undefined => {
  const changed = events.findLast(({ kind }) => kind !== 'shift' && kind !== 'plan')?.time ?? Number.NEGATIVE_INFINITY
  const isStore = check.kind === 'reading' && check.quantity === 'volume'
  const since = points.filter(({ time }) => time > changed)
  const filled = isStore ? since.findLastIndex((point, index) => index > 0 && point.value > since[index - 1]!.value + check.step) : 0
  const used = since.slice(Math.max(0, filled)).slice(-most)
  const [first] = used
  const last = used.at(-1)
  if (!first || !last || used.length < fewest || last.time === first.time) return undefined
  const towards = targetsOf(check, limits, last.value)
  const found = towards.flatMap(({ meets, limit }) => {
    const { hoursAhead, earliestHoursAhead, latestHoursAhead } = resultOf(chartForecast, { points: used.map(({ time, value }) => ({ hours: (time - first.time) / hour, value })), limit })
    if (hoursAhead === null || earliestHoursAhead === null || latestHoursAhead === null) return []
    if (hoursAhead * hour > furthestShare * (last.time - first.time)) return []
    return [{ meets, limit, at: last.time + hoursAhead * hour, earliest: last.time + Math.max(0, earliestHoursAhead) * hour, latest: last.time + latestHoursAhead * hour, points: used.length }]
  })
  return found.sort((a, b) => a.at - b.at)[0]
}

/** The limits that a value may still meet, above it and below. */
const targetsOf = (check: Check, limits: Limits, value: number): Pick<Forecast, 'meets' | 'limit'>[] => {
  if (check.kind === 'reading' && check.quantity === 'volume') return [{ meets: 'empty', limit: emptyAt(check) }]
  const { verdict } = judge(limits, value)
  if (check.kind === 'reading' && check.quantity === 'pressureDrop') return limits.actionHigh === undefined ? [] : [{ meets: 'filter', limit: limits.actionHigh }]
  if (verdict === 'ACT') return []
  const meets = verdict === 'IN' && (limits.warningLow !== undefined || limits.warningHigh !== undefined) ? 'warning' : 'action'
  const pair = meets === 'warning' ? [limits.warningLow, limits.warningHigh] : [limits.actionLow, limits.actionHigh]
  return pair.flatMap((limit) => (limit === undefined ? [] : [{ meets, limit }] as const))
}

/** A tank runs out where the pump draws air: where the machine is held for it, else at the end of its gauge. */
const emptyAt = (check: ReadingCheck): number => check.holdBelow ?? check.instrument.low
