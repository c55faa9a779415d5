import { calculation } from '../calculation.ts'

const gasConstant = 8.314462618 // J/(mol K); SI 2019
const faraday = 96485.33212 // C/mol; SI 2019

/**
 * Theoretical slope of a glass electrode in mV per pH, positive. Nernst: ln 10 · R T / F.
 * @example theoreticalMillivoltsPerPh(25) // 59.159
 */
export const theoreticalMillivoltsPerPh = (celsius: number): number => (Math.LN10 * gasConstant * (celsius + 273.15) * 1000) / faraday

export const phMeterSlope = calculation({
  id: 'phMeter.slope',
  title: 'Theoretical slope of a pH electrode',
  inputs: { celsius: { kind: 'number', unit: '°C', says: 'temperature', atLeast: 0, atMost: 100 } },
  outputs: { millivoltsPerPh: { kind: 'number', unit: 'mV', says: 'change of the electrode’s voltage for one pH' } },
  formula: 'ln 10 × R T ÷ F',
  source: 'Nernst equation, constants of the SI 2019',
  domain: '0 to 100 °C; real electrodes reach 92 to 100 % of it.',
  example: { inputs: { celsius: 25 }, result: { millivoltsPerPh: 59.159 }, tolerance: 5e-4, source: 'evaluated' },
  run: ({ celsius }) => ({ millivoltsPerPh: theoreticalMillivoltsPerPh(celsius) }),
  steps: ({ celsius }, { millivoltsPerPh }) => [
    { says: 'absolute temperature', formula: 't + 273.15', value: celsius + 273.15, unit: 'K' },
    { says: 'theoretical slope', formula: 'ln 10 × 8.314462618 × T ÷ 96485.33212', value: millivoltsPerPh, unit: 'mV/pH' },
  ],
})
