import { calculation } from '../calculation.ts'
import { silverGramsPerAmpereHour } from './faraday.ts'

export const silverPlate = calculation({
  id: 'silver.plate',
  title: 'Silver plated by a current',
  inputs: {
    amperes: { kind: 'number', unit: 'A', says: 'cell current', atLeast: 0 },
    hours: { kind: 'number', unit: 'h', says: 'time of plating', atLeast: 0 },
    efficiencyFraction: { kind: 'number', unit: '1', says: 'share of the current that plates silver', above: 0, atMost: 1, preset: 1 },
  },
  outputs: { grams: { kind: 'number', unit: 'g', says: 'silver on the cathode' } },
  formula: 'mass = current × time × efficiency × M(Ag) ÷ F',
  source: 'Faraday’s law; F = 96485.33212 C/mol (SI 2019), M(Ag) = 107.8682 g/mol',
  domain: 'Steady current, one electron a silver atom. Efficiency is 0.70 to 0.95 in a fixing bath and falls below about 1 g/L silver (common practice, no source).',
  example: {
    inputs: { amperes: 20, hours: 8, efficiencyFraction: 0.85 },
    result: { grams: 547.4 },
    tolerance: 0.05,
    source: 'Faraday’s law, worked by hand',
  },
  run: ({ amperes, hours, efficiencyFraction }) => ({ grams: amperes * hours * efficiencyFraction * silverGramsPerAmpereHour }),
  steps: ({ amperes, hours, efficiencyFraction }, { grams }) => [
    { says: 'charge', formula: 'current × time', value: amperes * hours, unit: 'A·h' },
    { says: 'silver that an ampere-hour plates', formula: '3600 × 107.8682 ÷ 96485.33212', value: silverGramsPerAmpereHour, unit: 'g/(A·h)' },
    { says: 'efficiency of the cell', value: efficiencyFraction, unit: '1' },
    { says: 'silver plated', formula: 'charge × silver per ampere-hour × efficiency', value: grams, unit: 'g' },
  ],
})
