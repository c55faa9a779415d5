/**
 * Constants of the range of n normal values, n = 2 to 10: d2 is its mean and d3 its standard deviation, in sigmas.
 *
 * d2 stands to three decimals, as every published table prints it, so that limits agree with a chart drawn by hand (1.128 for
 * two values; exactly 1.128379, which would set the limits of an individuals chart 0.03 % of their width further in). d3 to five
 * decimals, by numerical integration of the range's distribution (Tippett 1925, table; Pearson and Hartley, from memory).
 */
const ranges: ReadonlyMap<number, { d2: number; d3: number }> = new Map([
  [2, { d2: 1.128, d3: 0.8525 }],
  [3, { d2: 1.693, d3: 0.88837 }],
  [4, { d2: 2.059, d3: 0.87981 }],
  [5, { d2: 2.326, d3: 0.86408 }],
  [6, { d2: 2.534, d3: 0.84804 }],
  [7, { d2: 2.704, d3: 0.83321 }],
  [8, { d2: 2.847, d3: 0.81983 }],
  [9, { d2: 2.97, d3: 0.80783 }],
  [10, { d2: 3.078, d3: 0.79705 }],
])

export interface RangeConstants {
  d2: number
  d3: number
  /** Factor from mean range to the distance of the limits of means: 3 ÷ (d2·√n). */
  a2: number
  /** Factors from mean range to the lower and upper limit of ranges: 1 ∓ 3·d3 ÷ d2, the lower not below 0. */
  d3Lower: number
  d4Upper: number
}

export const rangeConstants = (count: number): RangeConstants => {
  const range = ranges.get(count)
  if (!range) throw new Error(`no chart constants for subgroups of ${count}`)
  const { d2, d3 } = range
  return { d2, d3, a2: 3 / (d2 * Math.sqrt(count)), d3Lower: Math.max(0, 1 - (3 * d3) / d2), d4Upper: 1 + (3 * d3) / d2 }
}

export const mean = (list: readonly number[]): number => list.reduce((sum, each) => sum + each, 0) / list.length
