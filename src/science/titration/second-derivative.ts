import { noAnswer } from '../refusal.ts'
import { checkedCurve, directionOf, type CurvePoint } from './curve.ts'

interface Slope {
  millilitres: number
  slope: number
}

/** Differences over intervals, each standing at the middle of its interval. */
const differences = (points: readonly Slope[]): Slope[] =>
  points.slice(1).map((point, index) => {
    const before = points[index]!
    return { millilitres: (point.millilitres + before.millilitres) / 2, slope: (point.slope - before.slope) / (point.millilitres - before.millilitres) }
  })

export interface SecondDerivative {
  millilitres: number
  /** Steepest change found, in reading per mL, and where. */
  steepest: Slope
  /** The two second derivatives between which it crosses zero. */
  before: Slope
  after: Slope
}

/** The steepest interval must be at least this many times as steep as the curve’s first and last, or the curve does not pass its end point. */
const leastProminence = 2
/** Share of all the ups and downs that must remain as net change; less is a curve that wanders. */
const leastNetShare = 0.8

/**
 * End point by the second derivative: first derivative at mid-volumes, second derivative at the middles of those, linear zero crossing
 * between the two that straddle the maximum of the first. Harvey, Modern Analytical Chemistry, chapter 9 (table 9.5). The error is a small part of the
 * step between readings near the end: take equal small steps there.
 * Refuses a curve that is flat, wanders, or is steepest at its beginning or its end.
 */
export const secondDerivative = (given: readonly CurvePoint[]): SecondDerivative => {
  const points = checkedCurve(given, 5)
  const direction = directionOf(points)
  const changes = points.slice(1).map(({ reading }, index) => reading - points[index]!.reading)
  const net = Math.abs(points.at(-1)!.reading - points[0]!.reading)
  const total = changes.reduce((sum, change) => sum + Math.abs(change), 0)
  if (total === 0 || net < leastNetShare * total) throw noAnswer('points', net, 'readings that change in one direction, with one steep step')
  const first = differences(points.map(({ millilitres, reading }) => ({ millilitres, slope: direction * reading })))
  const steepest = first.reduce((best, slope) => (slope.slope > best.slope ? slope : best))
  const place = first.indexOf(steepest)
  if (place === 0 || place === first.length - 1)
    throw noAnswer('points', steepest.millilitres, `a curve that goes on past its steepest change, which here stands at the ${place === 0 ? 'beginning' : 'end'}`)
  if (steepest.slope < leastProminence * Math.max(first[0]!.slope, first.at(-1)!.slope))
    throw noAnswer('points', steepest.slope, `a step at least ${leastProminence} times as steep as the curve’s beginning and end`)
  const second = differences(first)
  const before = second[place - 1]!
  const after = second[place]!
  const share = before.slope / (before.slope - after.slope)
  return { millilitres: before.millilitres + share * (after.millilitres - before.millilitres), steepest, before, after }
}
