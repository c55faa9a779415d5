import { calculation } from '../calculation.ts'
import { outside } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { mean, rangeConstants } from './constants.ts'
import { indexesWhere, outField } from './fields.ts'

const rangeOf = (group: readonly number[]): number => Math.max(...group) - Math.min(...group)

export const chartXbarRange = calculation({
  id: 'chart.xbarRange',
  title: 'Control chart for means and ranges',
  inputs: {
    subgroups: {
      kind: 'list',
      says: 'groups of readings taken together, all of one size, in the order of time',
      atLeast: 1,
      atMost: 2000,
      of: { kind: 'list', says: 'one group', atLeast: 2, atMost: 10, of: { kind: 'number', unit: '1', says: 'reading' } },
    },
    baseline: { kind: 'number', unit: '1', says: 'how many groups, from the start, set the limits; all when not given', whole: true, atLeast: 1, optional: true },
  },
  outputs: {
    centre: { kind: 'number', unit: '1', says: 'mean of the means' },
    lower: { kind: 'number', unit: '1', says: 'lower limit of means' },
    upper: { kind: 'number', unit: '1', says: 'upper limit of means' },
    rangeCentre: { kind: 'number', unit: '1', says: 'mean range' },
    rangeLower: { kind: 'number', unit: '1', says: 'lower limit of ranges' },
    rangeUpper: { kind: 'number', unit: '1', says: 'upper limit of ranges' },
    out: { ...outField, says: 'groups whose mean or range is beyond a limit, counted from 0' },
    meansOut: { ...outField, says: 'groups whose mean is beyond a limit, counted from 0' },
    rangesOut: { ...outField, says: 'groups whose range is beyond a limit, counted from 0' },
    sigma: { kind: 'number', unit: '1', says: 'mean range ÷ d2: standard deviation within groups' },
  },
  formula: 'limits of means = mean of means ± A2 × mean range, A2 = 3 ÷ (d2·√n); limits of ranges = (1 ∓ 3·d3 ÷ d2) × mean range',
  source: 'Shewhart 1931; ISO 7870-2; constants: d2 as printed tables have it, d3 by numerical integration',
  domain: 'Groups of 2 to 10 readings taken together; 20 groups or more to set limits (common practice). Limits for means assume what happens within groups also happens between them.',
  example: {
    inputs: { subgroups: [[0.65, 0.66], [0.64, 0.66], [0.65, 0.65], [0.66, 0.64]] },
    result: { centre: 0.65125, rangeCentre: 0.0125, lower: 0.62774, upper: 0.67476, rangeLower: 0, rangeUpper: 0.04084, out: [] },
    tolerance: 5e-6,
    source: 'invented gammas, worked by hand',
  },
  run: ({ subgroups, baseline }) => {
    const size = subgroups[0]!.length
    const odd = subgroups.findIndex((group) => group.length !== size)
    if (odd >= 0) throw noAnswer(`subgroups[${odd}]`, subgroups[odd], `${size} readings, as in the first group`)
    if (baseline !== undefined && baseline > subgroups.length)
      throw noAnswer('baseline', baseline, `a whole number, 1 to the ${subgroups.length} groups given`)
    const { d2, a2, d3Lower, d4Upper } = rangeConstants(size)
    const means = subgroups.map(mean)
    const ranges = subgroups.map(rangeOf)
    const count = baseline ?? subgroups.length
    const centre = mean(means.slice(0, count))
    const rangeCentre = mean(ranges.slice(0, count))
    const limits = { lower: centre - a2 * rangeCentre, upper: centre + a2 * rangeCentre }
    const rangeLimits = { lower: d3Lower * rangeCentre, upper: d4Upper * rangeCentre }
    const meansOut = indexesWhere(means, (each) => outside(each, limits))
    const rangesOut = indexesWhere(ranges, (each) => outside(each, rangeLimits))
    return {
      centre,
      ...limits,
      rangeCentre,
      rangeLower: rangeLimits.lower,
      rangeUpper: rangeLimits.upper,
      out: indexesWhere(subgroups, (_, index) => meansOut.includes(index) || rangesOut.includes(index)),
      meansOut,
      rangesOut,
      sigma: rangeCentre / d2,
    }
  },
  steps: ({ subgroups }, { centre, lower, upper, rangeCentre, rangeLower, rangeUpper }) => {
    const { a2, d3Lower, d4Upper } = rangeConstants(subgroups[0]!.length)
    return [
      { says: 'mean of the means', value: centre, unit: '1' },
      { says: 'mean range', value: rangeCentre, unit: '1' },
      { says: `A2 for ${subgroups[0]!.length} readings`, formula: '3 ÷ (d2·√n)', value: a2, unit: '1' },
      { says: 'upper limit of means', formula: 'mean + A2 × mean range', value: upper, unit: '1' },
      { says: 'lower limit of means', formula: 'mean − A2 × mean range', value: lower, unit: '1' },
      { says: 'upper limit of ranges', formula: `${d4Upper.toFixed(3)} × mean range`, value: rangeUpper, unit: '1' },
      { says: 'lower limit of ranges', formula: `${d3Lower.toFixed(3)} × mean range`, value: rangeLower, unit: '1' },
    ]
  },
})
