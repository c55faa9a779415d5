import { calculation } from '../calculation.ts'
import { above } from '../decimal.ts'
import { indexesWhere, outField, running, valuesField } from './fields.ts'

/** Tabular cumulative sums. The sums are not set back after a signal: the operator decides when a new segment starts. */
export const chartCusum = calculation({
  id: 'chart.cusum',
  title: 'Cumulative-sum chart (CUSUM)',
  inputs: {
    values: valuesField,
    target: { kind: 'number', unit: '1', says: 'aim' },
    k: { kind: 'number', unit: '1', says: 'slack: half the shift to be found, in the unit of the readings', atLeast: 0 },
    h: { kind: 'number', unit: '1', says: 'decision limit, in the unit of the readings', above: 0 },
    headStart: { kind: 'number', unit: '1', says: 'both sums start here, in the unit of the readings; half of h finds a wrong start sooner', atLeast: 0, preset: 0 },
  },
  outputs: {
    high: { kind: 'list', says: 'sum of what lay above target + k, never below 0', of: { kind: 'number', unit: '1', says: 'sum' } },
    low: { kind: 'list', says: 'sum of what lay below target − k, never below 0', of: { kind: 'number', unit: '1', says: 'sum' } },
    out: { ...outField, says: 'points where a sum is above h, counted from 0' },
  },
  formula: 'high = max(0, high₋₁ + x − target − k); low = max(0, low₋₁ + target − k − x); signal where a sum exceeds h',
  source: 'Page 1954; NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; head start: Lucas and Crosier 1982',
  domain: 'Independent readings of constant spread. k of half a sigma and h of 4 to 5 sigmas are usual (e-Handbook).',
  example: {
    inputs: { values: [0.8, 1.9, 1.4, 2.0, 1.1, 0.7, 2.6], target: 0, k: 0.5, h: 5, headStart: 2.5 },
    result: { high: [2.8, 4.2, 5.1, 6.6, 7.2, 7.4, 9.5], out: [2, 3, 4, 5, 6] },
    tolerance: 1e-9,
    source: 'Lucas and Crosier 1982, table 5',
  },
  run: ({ values, target, k, h, headStart }) => {
    const high = running(values, headStart, (before, value) => Math.max(0, before + value - target - k))
    const low = running(values, headStart, (before, value) => Math.max(0, before + target - k - value))
    return { high, low, out: indexesWhere(values, (_, index) => above(high[index]!, h) || above(low[index]!, h)) }
  },
  steps: ({ values, headStart, h }, { high, low }) => [
    { says: 'both sums start at', value: headStart, unit: '1' },
    ...values.flatMap((value, index) => [
      { says: `high sum after reading ${index + 1} (${value})`, formula: 'max(0, sum before + x − target − k)', value: high[index]!, unit: '1' },
      { says: `low sum after reading ${index + 1}`, formula: 'max(0, sum before + target − k − x)', value: low[index]!, unit: '1' },
    ]),
    { says: 'a sum signals above', value: h, unit: '1' },
  ],
})
