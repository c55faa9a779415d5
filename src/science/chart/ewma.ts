import { calculation } from '../calculation.ts'
import { outside } from '../decimal.ts'
import { indexesWhere, outField, running, valuesField } from './fields.ts'

/**
 * Exponentially weighted moving average: z = λ·x + (1 − λ)·z before, from the target. It sees small lasting shifts that a chart
 * of single readings misses. Limits: target ± width·σ·√(λ ÷ (2 − λ)), to which the exact ones, narrower at first, rise.
 */
export const chartEwma = calculation({
  id: 'chart.ewma',
  title: 'Moving-average chart (EWMA)',
  inputs: {
    values: valuesField,
    target: { kind: 'number', unit: '1', says: 'aim, from which the average starts' },
    sigma: { kind: 'number', unit: '1', says: 'standard deviation of single readings', above: 0 },
    lambda: { kind: 'number', unit: '1', says: 'weight of the newest reading', above: 0, atMost: 1 },
    width: { kind: 'number', unit: '1', says: 'distance of the limits in standard deviations of the average', above: 0, preset: 3 },
  },
  outputs: {
    ewma: { kind: 'list', says: 'average after each reading', of: { kind: 'number', unit: '1', says: 'average' } },
    lower: { kind: 'number', unit: '1', says: 'lower limit, asymptotic' },
    upper: { kind: 'number', unit: '1', says: 'upper limit, asymptotic' },
    out: outField,
    exactLower: { kind: 'list', says: 'lower limit at each point', of: { kind: 'number', unit: '1', says: 'limit' } },
    exactUpper: { kind: 'list', says: 'upper limit at each point', of: { kind: 'number', unit: '1', says: 'limit' } },
    exactOut: { ...outField, says: 'points beyond the exact limits, counted from 0' },
  },
  formula: 'z = λ·x + (1 − λ)·z₋₁, z₀ = target; limits = target ± width·σ·√(λ ÷ (2 − λ)); exact: × √(1 − (1 − λ)^(2t))',
  source: 'Roberts 1959; NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4',
  domain: 'Independent readings of constant spread. λ 0.2 to 0.3 is usual (e-Handbook).',
  example: {
    inputs: { values: [52, 47, 53, 49.3, 50.1], target: 50, sigma: 2.0539, lambda: 0.3 },
    result: { ewma: [50.6, 49.52, 50.56, 50.18, 50.16], lower: 47.4115, upper: 52.5884, out: [] },
    tolerance: 5e-3,
    source: 'NIST/SEMATECH e-Handbook, 6.3.2.4, first five points',
  },
  run: ({ values, target, sigma, lambda, width }) => {
    const ewma = running(values, target, (before, value) => lambda * value + (1 - lambda) * before)
    const far = width * sigma * Math.sqrt(lambda / (2 - lambda))
    const limits = { lower: target - far, upper: target + far }
    const exact = values.map((_, index) => far * Math.sqrt(1 - (1 - lambda) ** (2 * (index + 1))))
    const exactLower = exact.map((each) => target - each)
    const exactUpper = exact.map((each) => target + each)
    return {
      ewma,
      ...limits,
      out: indexesWhere(ewma, (each) => outside(each, limits)),
      exactLower,
      exactUpper,
      exactOut: indexesWhere(ewma, (each, index) => outside(each, { lower: exactLower[index]!, upper: exactUpper[index]! })),
    }
  },
  steps: ({ values, target, lambda }, { ewma, lower, upper }) => [
    { says: 'start', formula: 'target', value: target, unit: '1' },
    ...ewma.map((each, index) => ({
      says: `average after reading ${index + 1}`,
      formula: `${lambda} × ${values[index]} + ${1 - lambda} × average before`,
      value: each,
      unit: '1',
    })),
    { says: 'upper limit', formula: 'target + width·σ·√(λ ÷ (2 − λ))', value: upper, unit: '1' },
    { says: 'lower limit', formula: 'target − width·σ·√(λ ÷ (2 − λ))', value: lower, unit: '1' },
  ],
})
