import { calculation } from '../calculation.ts'
import { above } from '../decimal.ts'

/** Critical range over repeatability limit for 2, 3, 4, 5 and 6 determinations: f(n) ÷ 2.8, ISO 5725-6, table 1 (f: 2.8 3.3 3.6 3.9 4.0), from memory. */
const rangeFactor: Readonly<Record<number, number>> = { 2: 1, 3: 3.3 / 2.8, 4: 3.6 / 2.8, 5: 3.9 / 2.8, 6: 4 / 2.8 }

const middle = (sorted: readonly number[]): number => {
  const half = sorted.length >> 1
  return sorted.length % 2 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

const criticalRange = (limit: number, count: number): number => limit * (rangeFactor[count] ?? 1)

/**
 * What a few determinations of the same sample come to. As long as they lie no further apart than repeatability allows, their mean; two that do not ask
 * for a third; three or more that still do not, their median, which one bad determination cannot pull away.
 */
export const titrationRepeatability = calculation({
  id: 'titration.repeatability',
  title: 'Do determinations repeat?',
  inputs: {
    values: { kind: 'list', says: 'determinations of one sample', atLeast: 1, atMost: 6, of: { kind: 'number', unit: '1', says: 'determination' } },
    repeatabilityLimit: { kind: 'number', unit: '1', says: 'how far two determinations by the same hands may lie apart, 19 times of 20; 2.8 standard deviations', above: 0 },
  },
  outputs: {
    value: { kind: 'number', unit: '1', says: 'result that counts' },
    range: { kind: 'number', unit: '1', says: 'largest less smallest' },
    criticalRange: { kind: 'number', unit: '1', says: 'what the range may be with so many' },
    repeats: { kind: 'flag', says: 'they lie close enough together' },
    taken: { kind: 'choice', of: ['single', 'mean', 'median', 'thirdNeeded'], says: 'how the result was taken' },
  },
  formula: 'range ≤ f(n) ÷ 2.8 × limit: mean; two that differ by more: a third is needed; three or more: median',
  source: 'ISO 5725-6, acceptability of results under repeatability conditions, f(n) from memory',
  domain: 'The same sample, hands, burette and day. One determination alone says nothing of itself.',
  example: {
    inputs: { values: [12.1, 12.3], repeatabilityLimit: 0.25 },
    result: { value: 12.2, range: 0.2, repeats: true },
    tolerance: 1e-9,
    source: 'worked by hand',
  },
  run: ({ values, repeatabilityLimit }) => {
    const sorted = [...values].sort((a, b) => a - b)
    const range = sorted.at(-1)! - sorted[0]!
    const most = criticalRange(repeatabilityLimit, values.length)
    const repeats = !above(range, most)
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    const taken = values.length === 1 ? 'single' : repeats ? 'mean' : values.length === 2 ? 'thirdNeeded' : 'median'
    return { value: taken === 'median' ? middle(sorted) : mean, range, criticalRange: most, repeats, taken }
  },
  steps: ({ values, repeatabilityLimit }, { value, range, criticalRange: most, taken }) => [
    ...values.map((each, index) => ({ says: `determination ${index + 1}`, value: each, unit: '1' })),
    { says: 'largest less smallest', value: range, unit: '1' },
    { says: 'it may be', formula: values.length > 2 ? `f(${values.length}) ÷ 2.8 × ${repeatabilityLimit}` : 'repeatability limit', value: most, unit: '1' },
    { says: taken === 'thirdNeeded' ? 'mean; it does not count before a third' : taken === 'median' ? 'median' : taken === 'single' ? 'the one' : 'mean', value, unit: '1' },
  ],
})
