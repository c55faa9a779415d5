import { calculation } from '../calculation.ts'
import { noAnswer, Refusal } from '../refusal.ts'
import { mean, rangeConstants } from './constants.ts'
import { isNumber, movingRanges } from './individuals.ts'

const pair = rangeConstants(2)

interface Spread {
  mean: number
  sigma: number
  /** Standard deviation of all readings together; null where only mean and sigma are given. */
  overall: number | null
}

const spreadOf = (given: { values?: number[] | undefined; mean?: number | undefined; sigma?: number | undefined }): Spread => {
  if (given.values) {
    const { values } = given
    const centre = mean(values)
    const sigma = mean(movingRanges(values).filter(isNumber)) / pair.d2
    const overall = Math.sqrt(values.reduce((sum, each) => sum + (each - centre) ** 2, 0) / (values.length - 1))
    if (!(sigma > 0)) throw noAnswer('values', values, 'readings that differ from one to the next')
    return { mean: centre, sigma, overall }
  }
  return { mean: given.mean!, sigma: given.sigma!, overall: null }
}

const assertOneSource = (given: { values?: number[] | undefined; mean?: number | undefined; sigma?: number | undefined }): void => {
  const { values, mean: centre, sigma } = given
  if (values ? centre !== undefined || sigma !== undefined : centre === undefined && sigma === undefined)
    throw new Refusal({ code: 'exactlyOne', field: 'values', value: values, allowed: 'either values, or mean and sigma' })
  if (!values && centre === undefined) throw new Refusal({ code: 'missing', field: 'mean', value: centre, allowed: 'a number' })
  if (!values && sigma === undefined) throw new Refusal({ code: 'missing', field: 'sigma', value: sigma, allowed: 'a number, more than 0' })
}

interface Limits {
  lower?: number | undefined
  upper?: number | undefined
}

const width = ({ lower, upper }: Limits, sigma: number): number | null => (lower === undefined || upper === undefined ? null : (upper - lower) / (6 * sigma))

const nearest = ({ lower, upper }: Limits, centre: number, sigma: number): number =>
  Math.min(...(upper === undefined ? [] : [(upper - centre) / (3 * sigma)]), ...(lower === undefined ? [] : [(centre - lower) / (3 * sigma)]))

/**
 * Capability against limits of the product. From readings, Cp and Cpk use the spread from one reading to the next (mean moving
 * range ÷ 1.128) and Pp and Ppk the spread of all together: a process that wanders has a Pp below its Cp.
 */
export const chartCapability = calculation({
  id: 'chart.capability',
  title: 'Process capability',
  inputs: {
    values: { kind: 'list', says: 'readings in the order of time', atLeast: 2, atMost: 10_000, of: { kind: 'number', unit: '1', says: 'reading' }, optional: true },
    mean: { kind: 'number', unit: '1', says: 'mean, where no readings are given', optional: true },
    sigma: { kind: 'number', unit: '1', says: 'standard deviation, where no readings are given', above: 0, optional: true },
    lower: { kind: 'number', unit: '1', says: 'lower limit of the product', optional: true },
    upper: { kind: 'number', unit: '1', says: 'upper limit of the product', optional: true },
    target: { kind: 'number', unit: '1', says: 'aim, for Cpm', optional: true },
  },
  outputs: {
    cp: { kind: 'number', unit: '1', says: 'width of the limits in 6 sigmas; null with one limit', orNull: true },
    cpk: { kind: 'number', unit: '1', says: 'distance of the nearer limit from the mean in 3 sigmas' },
    mean: { kind: 'number', unit: '1', says: 'mean' },
    sigma: { kind: 'number', unit: '1', says: 'the standard deviation used for Cp and Cpk' },
    sigmaFrom: { kind: 'choice', says: 'where it comes from', of: ['movingRange', 'given'] },
    pp: { kind: 'number', unit: '1', says: 'as Cp, with the spread of all readings; null without readings', orNull: true },
    ppk: { kind: 'number', unit: '1', says: 'as Cpk, with the spread of all readings; null without readings', orNull: true },
    cpm: { kind: 'number', unit: '1', says: 'width of the limits in 6 × root of sigma² + (mean − target)²; null without target or with one limit', orNull: true },
  },
  formula: 'Cp = (upper − lower) ÷ 6σ; Cpk = least of (upper − mean) ÷ 3σ and (mean − lower) ÷ 3σ; Cpm = (upper − lower) ÷ 6√(σ² + (mean − target)²)',
  source: 'NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6',
  domain: 'A process in control and nearly normal; 50 readings or more for a figure worth keeping (common practice). A Cpk below 0 means that the mean lies outside the limits.',
  example: {
    inputs: { mean: 16, sigma: 2, lower: 8, upper: 20, target: 14 },
    result: { cp: 1, cpk: 0.6667, cpm: 0.7071, sigmaFrom: 'given' },
    tolerance: 5e-5,
    source: 'NIST/SEMATECH e-Handbook, 6.1.6 (Cpm worked by hand)',
  },
  run: ({ values, mean: givenMean, sigma: givenSigma, lower, upper, target }) => {
    assertOneSource({ values, mean: givenMean, sigma: givenSigma })
    if (lower === undefined && upper === undefined) throw new Refusal({ code: 'missing', field: 'lower', value: lower, allowed: 'a lower limit, an upper limit, or both' })
    if (lower !== undefined && upper !== undefined && !(upper > lower)) throw noAnswer('upper', upper, `a number, more than the lower limit, ${lower}`)
    const { mean: centre, sigma, overall } = spreadOf({ values, mean: givenMean, sigma: givenSigma })
    const limits = { lower, upper }
    return {
      cp: width(limits, sigma),
      cpk: nearest(limits, centre, sigma),
      mean: centre,
      sigma,
      sigmaFrom: values ? ('movingRange' as const) : ('given' as const),
      pp: overall === null ? null : width(limits, overall),
      ppk: overall === null ? null : nearest(limits, centre, overall),
      cpm: target === undefined ? null : width(limits, Math.hypot(sigma, centre - target)),
    }
  },
  steps: ({ lower, upper }, { mean: centre, sigma, sigmaFrom, cp, cpk, pp, ppk }) => [
    { says: 'mean', value: centre, unit: '1' },
    { says: 'sigma', formula: sigmaFrom === 'movingRange' ? 'mean moving range ÷ 1.128' : 'as given', value: sigma, unit: '1' },
    ...(upper === undefined ? [] : [{ says: 'distance to the upper limit', formula: '(upper − mean) ÷ 3 sigma', value: (upper - centre) / (3 * sigma), unit: '1' }]),
    ...(lower === undefined ? [] : [{ says: 'distance to the lower limit', formula: '(mean − lower) ÷ 3 sigma', value: (centre - lower) / (3 * sigma), unit: '1' }]),
    ...(cp === null ? [] : [{ says: 'Cp', formula: '(upper − lower) ÷ 6 sigma', value: cp, unit: '1' }]),
    { says: 'Cpk', formula: 'the lesser of the distances', value: cpk, unit: '1' },
    ...(pp === null ? [] : [{ says: 'Pp, with the spread of all readings', formula: '(upper − lower) ÷ 6 s', value: pp, unit: '1' }]),
    ...(ppk === null ? [] : [{ says: 'Ppk, with the spread of all readings', value: ppk, unit: '1' }]),
  ],
})
