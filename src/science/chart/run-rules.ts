import { above, below, same } from '../decimal.ts'

export interface RunChart {
  values: readonly number[]
  centre: number
  sigma: number
  gapsBefore: readonly number[]
  /** Points in a row on one side that make rule 2, and moving one way that make rule 3; 9 and 6 with Nelson. */
  sideLength: number
  trendLength: number
}

/**
 * The eight tests of Nelson 1984 (J. Quality Technology 16(4), 237), each as: does the pattern end at this point?
 *
 * Conventions: the flag sits on the point that completes a pattern, and on each further point of it. "Beyond" is strict, a point on a
 * line of the chart is inside it. In tests of so many out of so many the point itself must be beyond. A point on the
 * centre line ends a run, an equal neighbour ends a trend or an alternation, and so does a gap. Values are compared with the lines on
 * their own scale, by the rule for decimals, and no z is formed.
 */
export const runRules: readonly { rule: number; says: string; endsAt(chart: RunChart, index: number): boolean }[] = [
  { rule: 1, says: 'one point beyond 3 sigma', endsAt: (chart, index) => isBeyond(chart, index, 3, 1) || isBeyond(chart, index, 3, -1) },
  {
    rule: 2,
    says: 'points in a row on one side of the centre',
    endsAt: (chart, index) => eitherSide((side) => lastAll(index, chart.sideLength, (at) => isBeyond(chart, at, 0, side))),
  },
  {
    rule: 3,
    says: 'points in a row moving one way',
    endsAt: (chart, index) => eitherSide((side) => lastAll(index, chart.trendLength - 1, (at) => moves(chart, at) === side)),
  },
  { rule: 4, says: 'fourteen points in a row alternating up and down', endsAt: alternates },
  {
    rule: 5,
    says: 'two of three points beyond 2 sigma on one side',
    endsAt: (chart, index) => eitherSide((side) => someOf(chart, index, { of: 3, least: 2, sigmas: 2, side })),
  },
  {
    rule: 6,
    says: 'four of five points beyond 1 sigma on one side',
    endsAt: (chart, index) => eitherSide((side) => someOf(chart, index, { of: 5, least: 4, sigmas: 1, side })),
  },
  {
    rule: 7,
    says: 'fifteen points in a row within 1 sigma',
    endsAt: (chart, index) => lastAll(index, 15, (at) => !isBeyond(chart, at, 1, 1) && !isBeyond(chart, at, 1, -1)),
  },
  { rule: 8, says: 'eight points in a row beyond 1 sigma, on both sides', endsAt: keepsAway },
]

type Side = 1 | -1

const eitherSide = (holds: (side: Side) => boolean): boolean => holds(1) || holds(-1)

const isBeyond = ({ values, centre, sigma }: RunChart, index: number, sigmas: number, side: Side): boolean =>
  side > 0 ? above(values[index]!, centre + sigmas * sigma) : below(values[index]!, centre - sigmas * sigma)

/** Which way the chart moved to this point: 0 when it did not, or when nothing is known of the point before. */
const moves = ({ values, gapsBefore }: RunChart, index: number): Side | 0 => {
  const before = values[index - 1]
  if (before === undefined || gapsBefore.includes(index) || same(values[index]!, before)) return 0
  return values[index]! > before ? 1 : -1
}

/** The condition holds at this point and at the ones before it, `count` in all. */
const lastAll = (index: number, count: number, holds: (at: number) => boolean): boolean => {
  if (index + 1 < count) return false
  for (let at = index; at > index - count; at--) if (!holds(at)) return false
  return true
}

const someOf = (chart: RunChart, index: number, test: { of: number; least: number; sigmas: number; side: Side }): boolean => {
  // Of so many points there must be as many: at the start of a chart the test waits for them.
  if (index + 1 < test.of || !isBeyond(chart, index, test.sigmas, test.side)) return false
  let count = 0
  for (let at = index; at >= 0 && at > index - test.of; at--) if (isBeyond(chart, at, test.sigmas, test.side)) count++
  return count >= test.least
}

function alternates(chart: RunChart, index: number): boolean {
  return lastAll(index, 13, (at) => {
    const way = moves(chart, at)
    return way !== 0 && (at === index - 12 || moves(chart, at - 1) === -way)
  })
}

function keepsAway(chart: RunChart, index: number): boolean {
  let high = false
  let low = false
  const away = lastAll(index, 8, (at) => {
    const isHigh = isBeyond(chart, at, 1, 1)
    const isLow = isBeyond(chart, at, 1, -1)
    high ||= isHigh
    low ||= isLow
    return isHigh || isLow
  })
  return away && high && low
}
