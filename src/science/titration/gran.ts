import { theoreticalMillivoltsPerPh } from '../phMeter/slope.ts'
import { noAnswer } from '../refusal.ts'
import { checkedCurve, directionOf, type CurvePoint } from './curve.ts'

/** Which quantity is drawn against the volume: `weak` V × 10^∓reading, `strong` (S + V) × 10^∓reading. */
export type GranFunction = 'weak' | 'strong'

export interface Gran {
  millilitres: number
  function: GranFunction
  /** Of the straight line, per mL. */
  slope: number
  points: { millilitres: number; value: number }[]
  /** Share of the spread that the line explains. */
  determination: number
}

interface Given {
  points: readonly CurvePoint[]
  sampleMillilitres?: number | undefined
  celsius?: number | undefined
}

/** Past the end point the function has fallen to nothing: points below this share of its largest value take no part. */
const leastShare = 0.005
/** Below this a line through the points means nothing. */
const leastDetermination = 0.98

/**
 * End point by Gran’s straight line through the points before it (Gran 1952, Analyst 77, 661).
 *
 * weak acid with strong base: V × 10^−pH = Ka (Ve − V); strong acid: (S + V) × 10^−pH ∝ (Ve − V); the line meets zero at Ve. Readings that fall
 * (a base titrated with acid) turn the sign. Without `sampleMillilitres` only the first can be drawn; with it the one that lies nearer to a
 * straight line is taken. With `celsius`, readings that span more than 14 are millivolts and are divided by the theoretical slope.
 * Neglected: the acid’s own dissociation at the start (0.3 % of Ve for acetic acid at 0.02 mol/L) and the change of activity along the titration.
 */
export const gran = ({ points: given, sampleMillilitres, celsius }: Given): Gran => {
  const points = inPhUnits(checkedCurve(given, 4), celsius)
  const direction = directionOf(points)
  const middle = (points[0]!.reading + points.at(-1)!.reading) / 2
  const weight = (reading: number): number => 10 ** (-direction * (reading - middle))
  const weak = lineOf('weak', points.filter(({ millilitres }) => millilitres > 0).map(({ millilitres, reading }) => ({ millilitres, value: millilitres * weight(reading) })))
  const strong =
    sampleMillilitres === undefined
      ? undefined
      : lineOf('strong', points.map(({ millilitres, reading }) => ({ millilitres, value: (sampleMillilitres + millilitres) * weight(reading) })))
  const best = strong && weak ? (strong.determination > weak.determination ? strong : weak) : (weak ?? strong)
  if (!best) throw noAnswer('points', points.length, 'at least 3 points before the end point')
  if (best.slope >= 0 || best.determination < leastDetermination)
    throw noAnswer('points', best.determination, `points that lie on a falling straight line (at least ${leastDetermination} of the spread explained)`)
  const last = best.points.at(-1)!.millilitres
  const step = last - best.points.at(-2)!.millilitres
  if (best.millilitres < last - step) throw noAnswer('points', best.millilitres, `a line that meets zero after its last point, at ${last} mL`)
  return { ...best, slope: best.slope * 10 ** (-direction * middle) }
}

const inPhUnits = (points: readonly CurvePoint[], celsius: number | undefined): readonly CurvePoint[] => {
  const readings = points.map(({ reading }) => reading)
  const span = Math.max(...readings) - Math.min(...readings)
  if (span === 0) throw noAnswer('points', 0, 'readings that change along the titration')
  if (span <= 14) return points
  if (celsius === undefined) throw noAnswer('celsius', undefined, 'the temperature, for readings in millivolts (they span more than 14)')
  const slope = theoreticalMillivoltsPerPh(celsius)
  // Volts fall as pH rises.
  return points.map(({ millilitres, reading }) => ({ millilitres, reading: -reading / slope }))
}

const lineOf = (name: GranFunction, all: { millilitres: number; value: number }[]): Gran | undefined => {
  const largest = Math.max(...all.map(({ value }) => value))
  const points = all.filter(({ value }) => value >= leastShare * largest)
  if (points.length < 3) return undefined
  const x = points.reduce((sum, point) => sum + point.millilitres, 0) / points.length
  const y = points.reduce((sum, point) => sum + point.value, 0) / points.length
  const square = points.reduce((sum, point) => sum + (point.millilitres - x) ** 2, 0)
  const cross = points.reduce((sum, point) => sum + (point.millilitres - x) * (point.value - y), 0)
  const spread = points.reduce((sum, point) => sum + (point.value - y) ** 2, 0)
  const slope = cross / square
  return { millilitres: x - y / slope, function: name, slope, points, determination: spread === 0 ? 0 : cross ** 2 / (square * spread) }
}
