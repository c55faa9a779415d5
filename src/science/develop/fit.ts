import { calculation } from '../calculation.ts'
import { same } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { gammaAt, lawFields } from './law.ts'
import { fittedLaw, standardErrors, type DevelopmentPoint, type FittedLaw } from './least-squares.ts'

const wanted = 'gammas that rise with time and rise ever more slowly: for two times, each gamma in less than proportion to its time'

/** Of times t and 2t: κ = ln(γ1/(γ2 − γ1))/t, γ∞ = γ1²/(2γ1 − γ2); needs γ1 < γ2 < 2γ1. */
const lawOfDoubledTime = ([first, second]: readonly [DevelopmentPoint, DevelopmentPoint]): FittedLaw | undefined => {
  const rise = second.gamma - first.gamma
  const bend = first.gamma - rise
  if (same(rise, 0) || same(bend, 0) || rise < 0 || bend < 0) return undefined
  return { ratePerMinute: Math.log(first.gamma / rise) / first.minutes, gammaInfinity: first.gamma ** 2 / bend }
}

const doubled = (points: readonly DevelopmentPoint[]): readonly [DevelopmentPoint, DevelopmentPoint] | undefined => {
  const [first, second] = [...points].sort((a, b) => a.minutes - b.minutes)
  return points.length === 2 && first && second && same(second.minutes, 2 * first.minutes) ? [first, second] : undefined
}

export const developFit = calculation({
  id: 'develop.fit',
  title: 'Time–gamma curve',
  inputs: {
    points: {
      kind: 'list',
      says: 'strips of one stock in one bath, developed for different times',
      atLeast: 2,
      atMost: 200,
      of: {
        kind: 'group',
        says: 'one strip',
        fields: {
          minutes: { kind: 'number', unit: 'min', says: 'time of development', above: 0 },
          gamma: { kind: 'number', unit: '1', says: 'its gamma', above: 0 },
        },
      },
    },
  },
  outputs: {
    ...lawFields,
    residualStandardDeviation: { kind: 'number', unit: '1', says: 'scatter of the gammas about the curve; of two points nothing can be said', orNull: true },
    gammaInfinityStandardError: { kind: 'number', unit: '1', says: 'standard deviation of γ∞', orNull: true },
    ratePerMinuteStandardError: { kind: 'number', unit: '1/min', says: 'standard deviation of κ', orNull: true },
  },
  formula: 'γ = γ∞·(1 − e^(−κt)); of times t and 2t: κ = ln(γ₁ ÷ (γ₂ − γ₁)) ÷ t, γ∞ = γ₁² ÷ (2γ₁ − γ₂); of more: least squares',
  source: 'law: Sheppard and Mees (from memory), named by Ives, Airplane Photography, 1920; least squares by variable projection, Golub and Pereyra 1973',
  domain:
    'One stock, one bath, one temperature, one definition of gamma. The soaking time and fog are neglected. Errors of γ∞ are large when the longest time is ' +
    'still on the straight part: the standard errors show it. Refused where the points have no such curve.',
  example: {
    inputs: { points: [{ minutes: 3, gamma: 0.45 }, { minutes: 6, gamma: 0.65 }] },
    result: { gammaInfinity: 0.81, ratePerMinute: 0.27031 },
    tolerance: 5e-7,
    source: 'closed form, worked by hand',
  },
  run: ({ points }) => {
    const pair = doubled(points)
    if (points.every(({ minutes }) => same(minutes, points[0]!.minutes))) throw noAnswer('points', points, 'strips of two different times or more')
    const law = pair ? lawOfDoubledTime(pair) : fittedLaw(points)
    if (!law) throw noAnswer('points', points, wanted)
    const errors = points.length > 2 ? standardErrors(points, law) : undefined
    return {
      ...law,
      residualStandardDeviation: errors?.residual ?? null,
      gammaInfinityStandardError: errors?.gammaInfinity ?? null,
      ratePerMinuteStandardError: errors?.ratePerMinute ?? null,
    }
  },
  steps: ({ points }, { gammaInfinity, ratePerMinute, residualStandardDeviation }) => [
    {
      says: 'rate of development, κ',
      formula: doubled(points) ? 'ln(γ₁ ÷ (γ₂ − γ₁)) ÷ t' : 'least squares of γ = γ∞·(1 − e^(−κt))',
      value: ratePerMinute,
      unit: '1/min',
    },
    {
      says: 'gamma of endless development, γ∞',
      formula: doubled(points) ? 'γ₁² ÷ (2γ₁ − γ₂)' : 'the same least squares',
      value: gammaInfinity,
      unit: '1',
    },
    ...points.map(({ minutes, gamma }) => ({
      says: `curve at ${minutes} min, where ${gamma} was measured`,
      formula: 'γ∞·(1 − e^(−κt))',
      value: gammaAt({ gammaInfinity, ratePerMinute, minutes }),
      unit: '1',
    })),
    ...(residualStandardDeviation === null
      ? []
      : [{ says: 'scatter about the curve', formula: '√(sum of squares ÷ (points − 2))', value: residualStandardDeviation, unit: '1' }]),
  ],
})
