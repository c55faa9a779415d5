import { calculation } from '../calculation.ts'
import { tidy } from '../decimal.ts'
import { gran } from './gran.ts'
import { secondDerivative } from './second-derivative.ts'

const harvey: readonly (readonly [millilitres: number, pH: number])[] = [
  [0, 2.89], [2, 4.52], [4, 5.06], [10, 5.89], [12, 6.15], [14, 6.63], [15, 7.08], [15.5, 7.75],
  [15.6, 8.4], [15.7, 9.29], [15.8, 10.07], [16, 10.65], [17, 11.34], [18, 11.63], [20, 12], [24, 12.41],
]

export const titrationEndPoint = calculation({
  id: 'titration.endPoint',
  title: 'End point of a titration curve',
  inputs: {
    points: {
      kind: 'list',
      says: 'the curve, in the order of the titration',
      atLeast: 1,
      atMost: 1000,
      of: {
        kind: 'group',
        says: 'a volume and what the meter showed',
        fields: {
          millilitres: { kind: 'number', unit: 'mL', says: 'titrant run in', atLeast: 0, atMost: 10_000 },
          reading: { kind: 'number', unit: '1', says: 'pH, or millivolts', atLeast: -3000, atMost: 3000 },
        },
      },
    },
    method: { kind: 'choice', of: ['secondDerivative', 'gran'], says: 'zero of the second derivative, or Gran’s straight line through the points before the end' },
    sampleMillilitres: { kind: 'number', unit: 'mL', says: 'Gran: volume in the beaker at the start; lets a strong acid or base be drawn', above: 0, atMost: 10_000, optional: true },
    celsius: { kind: 'number', unit: '°C', says: 'Gran: temperature, for readings in millivolts', atLeast: 0, atMost: 100, optional: true },
  },
  outputs: { millilitres: { kind: 'number', unit: 'mL', says: 'titrant at the end point' } },
  formula: 'second derivative: linear zero crossing around the steepest change; Gran: zero of V × 10^−pH or (S + V) × 10^−pH',
  source: 'Harvey, Modern Analytical Chemistry, chapter 9; Gran 1952, Analyst 77, 661',
  domain: 'Second derivative: 5 points or more, on both sides of one steep step. Gran: 4 points or more, 3 of them before the end point. Curves with several steps: give the part around one.',
  example: {
    inputs: { points: harvey.map(([millilitres, reading]) => ({ millilitres, reading })), method: 'secondDerivative' },
    result: { millilitres: 15.669 },
    tolerance: 5e-4,
    source: 'Harvey, Modern Analytical Chemistry, table 9.5',
  },
  run: (given) => ({ millilitres: given.method === 'gran' ? gran(given).millilitres : secondDerivative(given.points).millilitres }),
  steps: (given, { millilitres }) => {
    if (given.method === 'gran') {
      const { function: drawn, slope, points, determination } = gran(given)
      return [
        { says: 'drawn against the volume', value: drawn === 'weak' ? 'V × 10^−pH' : '(S + V) × 10^−pH' },
        { says: 'points before the end point', value: points.length },
        { says: 'slope of the straight line', formula: 'least squares', value: slope, unit: '1/mL' },
        { says: 'share of the spread that the line explains', formula: 'r²', value: determination, unit: '1' },
        { says: 'volume at which it meets zero', value: millilitres, unit: 'mL' },
      ]
    }
    const { steepest, before, after } = secondDerivative(given.points)
    return [
      { says: 'steepest change', formula: `ΔE/ΔV at ${tidy(steepest.millilitres)} mL`, value: steepest.slope, unit: '1/mL' },
      { says: 'second derivative before it', formula: `at ${tidy(before.millilitres)} mL`, value: before.slope, unit: '1/mL²' },
      { says: 'second derivative after it', formula: `at ${tidy(after.millilitres)} mL`, value: after.slope, unit: '1/mL²' },
      { says: 'volume at which it crosses zero', formula: 'linear between the two', value: millilitres, unit: 'mL' },
    ]
  },
})
