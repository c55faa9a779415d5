import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'
import { theoreticalMillivoltsPerPh } from './slope.ts'

/** Volts fall as pH rises; the isopotential point is taken at pH 7, so only the slope follows the temperature. */
const phFrom = ({ millivolts, celsius, slopePercent, offsetMillivolts }: { millivolts: number; celsius: number; slopePercent: number; offsetMillivolts: number }): number =>
  7 + (offsetMillivolts - millivolts) / ((slopePercent / 100) * theoreticalMillivoltsPerPh(celsius))

export const phMeterRead = calculation({
  id: 'phMeter.read',
  title: 'pH from millivolts',
  inputs: {
    millivolts: { kind: 'number', unit: 'mV', says: 'electrode in the sample', atLeast: -1000, atMost: 1000 },
    celsius: { kind: 'number', unit: '°C', says: 'temperature of the sample', atLeast: 0, atMost: 100 },
    slopePercent: { kind: 'number', unit: '%', says: 'slope found at calibration, of the theoretical slope', atLeast: 50, atMost: 120 },
    offsetMillivolts: { kind: 'number', unit: 'mV', says: 'voltage at pH 7 found at calibration', atLeast: -200, atMost: 200 },
  },
  outputs: { pH: { kind: 'number', unit: '1', says: 'pH of the sample' } },
  formula: 'pH = 7 + (E₇ − E) ÷ (slope % ÷ 100 × ln 10 · R T ÷ F)',
  source: 'Nernst equation; isopotential point at pH 7: common practice, no source',
  domain: 'pH 0 to 14. An electrode’s isopotential point may lie some tenths of a pH from 7: calibrate within 5 K of the bath. Sodium error above pH 12 is neglected.',
  example: {
    inputs: { millivolts: -88, celsius: 25, slopePercent: 95.14, offsetMillivolts: 0.4 },
    result: { pH: 8.5706 },
    tolerance: 0.0005,
    source: 'calibration in 6.865 (+8.0 mV) and 9.180 (−122.3 mV) at 25 °C, worked out',
  },
  run: (given) => {
    const pH = phFrom(given)
    if (pH < 0 || pH > 14) throw noAnswer('millivolts', given.millivolts, `a voltage that means pH 0 to 14; this one would mean ${pH.toFixed(2)}`)
    return { pH }
  },
  steps: ({ millivolts, celsius, slopePercent, offsetMillivolts }, { pH }) => [
    { says: 'theoretical slope at this temperature', formula: 'ln 10 × R T ÷ F', value: theoreticalMillivoltsPerPh(celsius), unit: 'mV/pH' },
    { says: 'slope of this electrode', formula: 'slope % × theory', value: (slopePercent / 100) * theoreticalMillivoltsPerPh(celsius), unit: 'mV/pH' },
    { says: 'distance from the voltage at pH 7', formula: 'E₇ − E', value: offsetMillivolts - millivolts, unit: 'mV' },
    { says: 'pH of the sample', formula: '7 + distance ÷ slope', value: pH, unit: 'pH' },
  ],
})
