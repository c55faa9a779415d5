import { calculation } from '../calculation.ts'
import { gapFields, valuesField } from './fields.ts'
import { runRules, type RunChart } from './run-rules.ts'

export const chartRules = calculation({
  id: 'chart.rules',
  title: 'Run rules of a control chart',
  inputs: {
    values: valuesField,
    centre: { kind: 'number', unit: '1', says: 'centre line' },
    sigma: { kind: 'number', unit: '1', says: 'standard deviation of single readings', above: 0 },
    sideLength: { kind: 'number', unit: '1', says: 'points in a row on one side that make rule 2', whole: true, atLeast: 4, atMost: 20, preset: 9 },
    trendLength: { kind: 'number', unit: '1', says: 'points in a row moving one way that make rule 3', whole: true, atLeast: 4, atMost: 20, preset: 6 },
    ...gapFields,
  },
  outputs: {
    flags: {
      kind: 'list',
      says: 'patterns found, in the order of points and rules',
      of: {
        kind: 'group',
        says: 'one flag',
        fields: {
          index: { kind: 'number', unit: '1', says: 'point that completes the pattern, counted from 0', whole: true },
          rule: { kind: 'number', unit: '1', says: 'number of the rule', whole: true, atLeast: 1, atMost: 8 },
        },
      },
    },
  },
  formula:
    '1 one beyond 3σ; 2 nine in a row on one side; 3 six in a row moving one way; 4 fourteen alternating; 5 two of three beyond 2σ; 6 four of five beyond 1σ; 7 fifteen within 1σ; 8 eight beyond 1σ on both sides',
  source: 'Nelson 1984, J. Quality Technology 16(4), 237 (numbering and texts as a general-purpose SPC library has them)',
  domain:
    'A point on a line is inside it; one on the centre line ends a run; an equal neighbour or a gap ends a trend. Run lengths differ between standards (5, 7, 8, 9) and are settings. ' +
    'All eight together give a false alarm about every 60 points of a process in control (from memory): choose the few that fit.',
  example: {
    inputs: { values: [0.2, -0.9, -0.6, -0.2, 0.1, 0.5, 0.9, 1.4, 0.8], centre: 0, sigma: 1 },
    result: { flags: [{ index: 6, rule: 3 }, { index: 7, rule: 3 }] },
    tolerance: 0,
    source: 'sequence checked with two programs',
  },
  run: ({ gapsBefore = [], ...rest }) => {
    const chart: RunChart = { ...rest, gapsBefore }
    return { flags: chart.values.flatMap((_, index) => runRules.filter((each) => each.endsAt(chart, index)).map(({ rule }) => ({ index, rule }))) }
  },
  steps: ({ values, centre, sigma }, { flags }) => [
    ...[1, 2, 3].flatMap((width) => [
      { says: `centre + ${width} sigma`, value: centre + width * sigma, unit: '1' },
      { says: `centre − ${width} sigma`, value: centre - width * sigma, unit: '1' },
    ]),
    ...(flags.length > 0
      ? flags.map(({ index, rule }) => ({ says: `point ${index + 1} (${values[index]}) completes: ${runRules[rule - 1]!.says}`, value: rule, unit: '1' }))
      : [{ says: 'patterns found', value: 0, unit: '1' }]),
  ],
})
