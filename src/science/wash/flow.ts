import { calculation } from '../calculation.ts'
import { above } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { ratioForShare } from './counter-current.ts'

export const washFlow = calculation({
  id: 'wash.flow',
  title: 'Wash flow for a wanted end',
  inputs: {
    stages: { kind: 'number', unit: '1', says: 'wash tanks in line', whole: true, atLeast: 1, atMost: 20 },
    carryLitresPerSquareMetre: { kind: 'number', unit: 'L/m²', says: 'liquid that film carries from tank to tank', above: 0 },
    inGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'salt in the liquid that film brings to the first tank', above: 0 },
    outGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'salt wanted in the liquid that film takes out', above: 0 },
    squareMetresPerMinute: { kind: 'number', unit: 'm²/min', says: 'film washed in a minute', atLeast: 0 },
  },
  outputs: {
    litresPerMinute: { kind: 'number', unit: 'L/min', says: 'flow of clean water' },
    washLitresPerSquareMetre: { kind: 'number', unit: 'L/m²', says: 'clean water for each area of film' },
    ratio: { kind: 'number', unit: '1', says: 'wash water to carry-over' },
  },
  formula: '1 + r + r² + … + rᴺ = in ÷ out, solved for r; flow = r × carry-over × film a minute',
  source: 'steady balance of each tank; Kremser form of it, from memory',
  domain: 'Steady state, ideal mixing, clean water. The time that salt needs to leave the gelatine is neglected: take the flow as the least.',
  example: {
    inputs: { stages: 2, carryLitresPerSquareMetre: 0.04, inGramsPerLitre: 150, outGramsPerLitre: 0.002, squareMetresPerMinute: 0.6995 },
    result: { litresPerMinute: 7.648, ratio: 273.36 },
    tolerance: 5e-3,
    source: 'solved by hand: r² + r + 1 = 75000',
  },
  run: ({ stages, carryLitresPerSquareMetre, inGramsPerLitre, outGramsPerLitre, squareMetresPerMinute }) => {
    if (above(outGramsPerLitre, inGramsPerLitre))
      throw noAnswer('outGramsPerLitre', outGramsPerLitre, `a number, at most what comes in: ${inGramsPerLitre} g/L`)
    const ratio = ratioForShare({ stages, share: Math.min(1, outGramsPerLitre / inGramsPerLitre) })
    const washLitresPerSquareMetre = ratio * carryLitresPerSquareMetre
    return { litresPerMinute: washLitresPerSquareMetre * squareMetresPerMinute, washLitresPerSquareMetre, ratio }
  },
  steps: ({ stages, inGramsPerLitre, outGramsPerLitre }, { ratio, washLitresPerSquareMetre, litresPerMinute }) => [
    { says: 'how many times weaker', formula: 'in ÷ out', value: inGramsPerLitre / outGramsPerLitre, unit: '1' },
    { says: 'wash water to carry-over, r', formula: `1 + r + … + r^${stages} = in ÷ out`, value: ratio, unit: '1' },
    { says: 'clean water for each area of film', formula: 'r × carry-over', value: washLitresPerSquareMetre, unit: 'L/m²' },
    { says: 'flow of clean water', formula: 'water per area × film a minute', value: litresPerMinute, unit: 'L/min' },
  ],
})
