import { calculation } from '../calculation.ts'
import { above, outside } from '../decimal.ts'
import type { Values } from '../field.ts'
import { noAnswer } from '../refusal.ts'
import { bufferAt, bufferKeys } from './buffer-table.ts'
import { theoreticalMillivoltsPerPh } from './slope.ts'

const inputs = {
  points: {
    kind: 'list',
    says: 'one reading a buffer',
    atLeast: 2,
    atMost: 10,
    of: {
      kind: 'group',
      says: 'a buffer and what the meter showed in it',
      fields: {
        buffer: { kind: 'choice', of: bufferKeys, says: 'a standard buffer, whose pH is looked up', optional: true },
        pH: { kind: 'number', unit: '1', says: 'or the pH printed on the bottle for this temperature', atLeast: 0, atMost: 14, optional: true },
        celsius: { kind: 'number', unit: '°C', says: 'temperature of the buffer', atLeast: 0, atMost: 50 },
        millivolts: { kind: 'number', unit: 'mV', says: 'voltage once it stands still', atLeast: -1000, atMost: 1000 },
      },
      exactlyOne: [['buffer', 'pH']],
    },
  },
} as const

/** Two buffers nearer than this leave the slope to the noise. The nearest pair of standards, borax and carbonate, is 0.8 apart. */
const leastSpreadPh = 0.5

/** Slope and offset that may be used: USP ⟨791⟩, from memory. */
const usable = { slopePercent: { lower: 90, upper: 105 }, offsetMillivolts: { lower: -30, upper: 30 } }
/** Slope and offset of an electrode in good order: common practice, no source. */
const good = { slopePercent: { lower: 95, upper: 102 }, offsetMillivolts: { lower: -15, upper: 15 } }
/** A third buffer must read within this: a wastewater laboratory’s guide. */
const mostResidualPh = 0.1

interface Point {
  pH: number
  millivolts: number
  /** Voltage of a perfect electrode with no offset in this buffer: theory × (7 − pH). */
  ideal: number
}

interface Fit {
  points: Point[]
  slopeFraction: number
  offsetMillivolts: number
  celsius: number
  residualPh: number
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * Least squares of E = E₇ + s × theory(T) × (7 − pH) over the points: with two it is the line through both. Each buffer counts at its own
 * temperature, the isopotential point being at pH 7.
 */
const fitted = (given: Values<typeof inputs>): Fit => {
  const points = given.points.map(({ buffer, pH, celsius, millivolts }, index): Point => {
    const value = buffer === undefined ? pH! : bufferAt({ buffer, celsius }, `points[${index}].celsius`).pH
    return { pH: value, millivolts, ideal: theoreticalMillivoltsPerPh(celsius) * (7 - value) }
  })
  const values = points.map(({ pH }) => pH)
  const spread = Math.max(...values) - Math.min(...values)
  if (spread < leastSpreadPh) throw noAnswer('points', spread, `buffers at least ${leastSpreadPh} pH apart`)
  const idealMean = mean(points.map(({ ideal }) => ideal))
  const foundMean = mean(points.map(({ millivolts }) => millivolts))
  const square = points.reduce((sum, { ideal }) => sum + (ideal - idealMean) ** 2, 0)
  const cross = points.reduce((sum, { ideal, millivolts }) => sum + (ideal - idealMean) * (millivolts - foundMean), 0)
  const slopeFraction = cross / square
  const celsius = mean(given.points.map((point) => point.celsius))
  if (slopeFraction <= 0)
    throw noAnswer('points', -slopeFraction * theoreticalMillivoltsPerPh(celsius), 'voltages that fall as the pH rises: buffers exchanged, or the electrode’s sign turned round')
  const offsetMillivolts = foundMean - slopeFraction * idealMean
  const residuals = points.map(({ ideal, millivolts }) => Math.abs(millivolts - offsetMillivolts - slopeFraction * ideal))
  return { points, slopeFraction, offsetMillivolts, celsius, residualPh: Math.max(...residuals) / (slopeFraction * theoreticalMillivoltsPerPh(celsius)) }
}

const advices = ['use', 'useAndCleanSoon', 'cleanOrReplaceElectrode', 'checkBuffersAndTemperature', 'checkReferenceElectrode', 'repeatWithFreshBuffers'] as const
type Advice = (typeof advices)[number]

const adviceOn = ({ slopePercent, offsetMillivolts, residualPh }: { slopePercent: number; offsetMillivolts: number; residualPh: number }): Advice => {
  if (above(residualPh, mostResidualPh)) return 'repeatWithFreshBuffers'
  if (outside(slopePercent, usable.slopePercent)) return slopePercent > 100 ? 'checkBuffersAndTemperature' : 'cleanOrReplaceElectrode'
  if (outside(offsetMillivolts, usable.offsetMillivolts)) return 'checkReferenceElectrode'
  if (outside(slopePercent, good.slopePercent) || outside(offsetMillivolts, good.offsetMillivolts)) return 'useAndCleanSoon'
  return 'use'
}

export const phMeterCalibrate = calculation({
  id: 'phMeter.calibrate',
  title: 'Calibration of a pH meter',
  inputs,
  outputs: {
    slopeMillivoltsPerPh: { kind: 'number', unit: 'mV', says: 'change of voltage for one pH, negative, at the mean temperature of the buffers' },
    slopePercent: { kind: 'number', unit: '%', says: 'of the theoretical slope' },
    offsetMillivolts: { kind: 'number', unit: 'mV', says: 'voltage at pH 7' },
    zeroPointPh: { kind: 'number', unit: '1', says: 'pH at which the voltage is zero' },
    residualPh: { kind: 'number', unit: '1', says: 'how far the worst buffer lies from the line; 0 with two buffers' },
    acceptable: { kind: 'flag', says: 'slope 90 to 105 %, offset within 30 mV, every buffer within 0.1 pH of the line' },
    advice: { kind: 'choice', of: advices, says: 'what to do with the electrode' },
  },
  formula: 'E = E₇ + s × (ln 10 · R T ÷ F) × (7 − pH), least squares',
  source: 'Nernst equation; limits USP ⟨791⟩ (from memory); 95 to 102 % and 15 mV for an electrode in good order: common practice, no source',
  domain: '2 to 10 buffers at 0 to 50 °C whose pH spans at least 0.5; choose buffers on both sides of the bath’s pH.',
  example: {
    inputs: { points: [{ buffer: 'phosphate', celsius: 25, millivolts: 8 }, { buffer: 'borax', celsius: 25, millivolts: -122.3 }] },
    result: { slopeMillivoltsPerPh: -56.285, slopePercent: 95.14, offsetMillivolts: 0.4, acceptable: true, advice: 'use' },
    tolerance: 0.005,
    source: 'line through the two points, worked out',
  },
  run: (given) => {
    const { slopeFraction, offsetMillivolts, celsius, residualPh } = fitted(given)
    const slope = slopeFraction * theoreticalMillivoltsPerPh(celsius)
    const slopePercent = slopeFraction * 100
    const advice = adviceOn({ slopePercent, offsetMillivolts, residualPh })
    return {
      slopeMillivoltsPerPh: -slope,
      slopePercent,
      offsetMillivolts,
      zeroPointPh: 7 + offsetMillivolts / slope,
      residualPh,
      acceptable: advice === 'use' || advice === 'useAndCleanSoon',
      advice,
    }
  },
  steps: (given, { slopeMillivoltsPerPh, slopePercent, offsetMillivolts, zeroPointPh, residualPh }) => {
    const { points, celsius } = fitted(given)
    return [
      ...points.map(({ pH, millivolts }) => ({ says: `buffer of pH ${pH.toFixed(3)}`, value: millivolts, unit: 'mV' })),
      { says: 'theoretical slope', formula: 'ln 10 × R T ÷ F', value: theoreticalMillivoltsPerPh(celsius), unit: 'mV/pH' },
      { says: 'slope found', formula: points.length === 2 ? '(E₂ − E₁) ÷ (pH₂ − pH₁)' : 'least squares', value: slopeMillivoltsPerPh, unit: 'mV/pH' },
      { says: 'share of the theoretical slope', value: slopePercent, unit: '%' },
      { says: 'voltage at pH 7', value: offsetMillivolts, unit: 'mV' },
      { says: 'pH at zero volts', value: zeroPointPh, unit: 'pH' },
      ...(points.length > 2 ? [{ says: 'worst buffer’s distance from the line', value: residualPh, unit: 'pH' }] : []),
    ]
  },
})
