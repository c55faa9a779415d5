import { Refusal, noAnswer } from '../refusal.ts'

export interface CurvePoint {
  millilitres: number
  reading: number
}

/** A curve whose volumes rise from point to point; anything else cannot be differentiated. */
export const checkedCurve = (points: readonly CurvePoint[], least: number): readonly CurvePoint[] => {
  if (points.length < least) throw new Refusal({ code: 'tooFew', field: 'points', value: points.length, allowed: `at least ${least} points for this method` })
  points.forEach(({ millilitres }, index) => {
    const before = points[index - 1]
    if (before && millilitres <= before.millilitres)
      throw noAnswer(`points[${index}].millilitres`, millilitres, `more than the ${before.millilitres} mL before it: points in the order of the titration, none twice`)
  })
  return points
}

/** +1 when the readings rise along the titration, −1 when they fall. */
export const directionOf = (points: readonly CurvePoint[]): 1 | -1 => (points.at(-1)!.reading >= points[0]!.reading ? 1 : -1)
