import { calculation } from '../calculation.ts'
import { above, outside } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { mean, rangeConstants } from './constants.ts'
import { gapFields, indexesWhere, outField, valuesField } from './fields.ts'

const pair = rangeConstants(2)

/** Distance of each reading from the one before it; null at the start and after a gap. */
export const movingRanges = (values: readonly number[], gapsBefore: readonly number[] = []): (number | null)[] =>
  values.map((value, index) => (index === 0 || gapsBefore.includes(index) ? null : Math.abs(value - values[index - 1]!)))

export const isNumber = (value: number | null): value is number => value !== null

/**
 * Chart for individual readings with limits from the moving range of two.
 *
 * centre ± 3 × (mean moving range ÷ 1.128); the moving range itself has the upper limit 3.267 × its mean. Limits come from the first
 * `baseline` readings and hold for all: a chart whose limits follow every new point cannot see a slow drift.
 */
export const chartIndividuals = calculation({
  id: 'chart.individuals',
  title: 'Control chart for individual readings',
  inputs: {
    values: { ...valuesField, atLeast: 2 },
    baseline: { kind: 'number', unit: '1', says: 'how many readings, from the start, set the limits; all when not given', whole: true, atLeast: 2, optional: true },
    ...gapFields,
  },
  outputs: {
    centre: { kind: 'number', unit: '1', says: 'mean of the baseline' },
    lower: { kind: 'number', unit: '1', says: 'lower limit' },
    upper: { kind: 'number', unit: '1', says: 'upper limit' },
    sigma: { kind: 'number', unit: '1', says: 'mean moving range ÷ 1.128' },
    movingRangeMean: { kind: 'number', unit: '1', says: 'mean moving range of the baseline' },
    movingRangeUpper: { kind: 'number', unit: '1', says: 'upper limit of the moving range' },
    out: outField,
    movingRangeOut: { ...outField, says: 'points whose moving range is beyond its limit, counted from 0' },
  },
  formula: 'limits = mean ± 3 × mean moving range ÷ 1.128; upper limit of the moving range = 3.267 × its mean',
  source: 'Shewhart 1931; NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2; ISO 7870-2',
  domain: 'Readings about a level that does not drift within the baseline, 20 or more to set limits (two at least). A missed reading leaves no moving range across the gap.',
  example: {
    inputs: { values: [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1] },
    result: { centre: 50.81, lower: 45.8159, upper: 55.8041, movingRangeMean: 1.8778, movingRangeUpper: 6.135, out: [] },
    tolerance: 5e-4,
    source: 'NIST/SEMATECH e-Handbook, 6.3.2.2, flowrate example',
  },
  run: ({ values, baseline, gapsBefore }) => {
    if (baseline !== undefined && baseline > values.length)
      throw noAnswer('baseline', baseline, `a whole number, 2 to the ${values.length} readings given`)
    const ranges = movingRanges(values, gapsBefore)
    const count = baseline ?? values.length
    const base = ranges.slice(0, count).filter(isNumber)
    if (base.length === 0) throw noAnswer('gapsBefore', gapsBefore, 'gaps that leave at least one moving range in the baseline')
    const centre = mean(values.slice(0, count))
    const movingRangeMean = mean(base)
    const sigma = movingRangeMean / pair.d2
    const limits = { lower: centre - 3 * sigma, upper: centre + 3 * sigma }
    const movingRangeUpper = pair.d4Upper * movingRangeMean
    return {
      centre,
      ...limits,
      sigma,
      movingRangeMean,
      movingRangeUpper,
      out: indexesWhere(values, (value) => outside(value, limits)),
      movingRangeOut: indexesWhere(ranges, (range) => range !== null && above(range, movingRangeUpper)),
    }
  },
  steps: ({ values, baseline }, { centre, sigma, lower, upper, movingRangeMean, movingRangeUpper }) => [
    { says: 'readings that set the limits', value: baseline ?? values.length, unit: '1' },
    { says: 'centre', formula: 'mean of these readings', value: centre, unit: '1' },
    { says: 'mean moving range', formula: 'mean distance of neighbours', value: movingRangeMean, unit: '1' },
    { says: 'sigma', formula: 'mean moving range ÷ 1.128', value: sigma, unit: '1' },
    { says: 'upper limit', formula: 'centre + 3 sigma', value: upper, unit: '1' },
    { says: 'lower limit', formula: 'centre − 3 sigma', value: lower, unit: '1' },
    { says: 'upper limit of the moving range', formula: '3.267 × mean moving range', value: movingRangeUpper, unit: '1' },
  ],
})
