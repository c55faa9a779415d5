import { calculation } from '../calculation.ts'
import { above, tidy } from '../decimal.ts'

const leastHistory = 5 // readings; a decision, no source
const factor = 1.4826 // makes the MAD of normal readings their standard deviation; 1 ÷ 0.6745
const limit = 3 // Pearson 2005, as cited; some texts leave out the factor, so the limit goes with it

/** Places after the decimal point with which a number would be keyed. */
const places = (value: number): number => {
  const [digits = '', exponent = '0'] = String(value).split('e')
  return Math.max(0, (digits.split('.')[1] ?? '').length - Number(exponent))
}

const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}

const screened = (value: number, centre: number, spread: number): { score: number; isPlausible: boolean } => ({
  score: (value - centre) / spread,
  isPlausible: !above(Math.abs(value - centre), limit * spread),
})

/** The reading that a slipped decimal point would explain, where just moving the point brings it in line. */
const slipped = (value: number, centre: number, spread: number): number | null => {
  const candidates = [10, 0.1, 100, 0.01, 1000, 0.001].map((shift) => tidy(value * shift))
  const fitting = candidates.filter((candidate) => candidate !== value && screened(candidate, centre, spread).isPlausible)
  const [best] = fitting.sort((a, b) => Math.abs(a - centre) - Math.abs(b - centre))
  return best ?? null
}

/**
 * Whether a keyed reading is far from the recent ones (Hampel identifier). Median and MAD are not moved by a few wrong readings
 * in the history, as mean and standard deviation would be. A flag asks for a second look; it never refuses a reading.
 *
 * The spread has a floor of one step of the instrument's display: readings that all agree would otherwise make any other one
 * suspect (a decision, no source). Where the step is not given and the MAD is 0, the last decimal that was keyed is taken for it.
 */
export const readingScreen = calculation({
  id: 'reading.screen',
  title: 'Second look at a reading',
  inputs: {
    history: { kind: 'list', says: 'recent readings of the same check, the new one not among them', atMost: 1000, of: { kind: 'number', unit: '1', says: 'reading' } },
    value: { kind: 'number', unit: '1', says: 'reading just keyed' },
    resolution: { kind: 'number', unit: '1', says: 'step of the instrument’s display', above: 0, optional: true },
  },
  outputs: {
    plausible: { kind: 'flag', says: 'in line with the recent readings; null with fewer than 5 of them', orNull: true },
    median: { kind: 'number', unit: '1', says: 'median of the recent readings; null with none', orNull: true },
    spread: { kind: 'number', unit: '1', says: '1.4826 × median distance from the median, with the display step as its floor', orNull: true },
    score: { kind: 'number', unit: '1', says: 'distance of the new reading from the median in spreads', orNull: true },
    slippedPoint: { kind: 'number', unit: '1', says: 'the same digits with the decimal point moved, where that would be in line', orNull: true },
  },
  formula: 'spread = greater of 1.4826 × median|x − median| and the display step; score = (new − median) ÷ spread; plausible when |score| ≤ 3',
  source: 'Hampel identifier: Hampel 1974, Pearson 2005 (as cited); the floor and the least history are decisions',
  domain: 'Five recent readings or more of one check on one instrument. A bath that drifts steadily has a wide spread and is not flagged.',
  example: {
    inputs: { history: [10.12, 10.1, 10.14, 10.11, 10.13, 10.12, 10.09], value: 10.21, resolution: 0.01 },
    result: { plausible: false, median: 10.12, spread: 0.014826, score: 6.0704 },
    tolerance: 5e-5,
    source: 'worked by hand',
  },
  run: ({ history, value, resolution }) => {
    const centre = history.length > 0 ? tidy(median(history)) : null
    if (centre === null || history.length < leastHistory) return { plausible: null, median: centre, spread: null, score: null, slippedPoint: null }
    const byHistory = factor * tidy(median(history.map((each) => Math.abs(each - centre))))
    const keyedStep = 10 ** -Math.max(...[...history, value].map(places))
    const spread = Math.max(byHistory, resolution ?? (byHistory > 0 ? 0 : keyedStep))
    const { score, isPlausible } = screened(value, centre, spread)
    return { plausible: isPlausible, median: centre, spread, score, slippedPoint: isPlausible ? null : slipped(value, centre, spread) }
  },
  steps: ({ history, value }, { median: centre, spread, score, slippedPoint }) => [
    { says: 'recent readings', value: history.length, unit: '1' },
    { says: 'median', value: centre ?? 'none', unit: '1' },
    { says: 'spread', formula: '1.4826 × median|x − median|, at least one display step', value: spread ?? 'needs 5 readings', unit: '1' },
    { says: 'score', formula: `(${value} − median) ÷ spread`, value: score ?? 'needs 5 readings', unit: '1' },
    ...(slippedPoint === null ? [] : [{ says: 'with the decimal point moved it would be in line', value: slippedPoint, unit: '1' }]),
  ],
})
