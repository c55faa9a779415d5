import { calculation } from '../calculation.ts'
import { carriedShare } from './counter-current.ts'

export const washCascade = calculation({
  id: 'wash.cascade',
  title: 'Counter-current wash',
  inputs: {
    stages: { kind: 'number', unit: '1', says: 'wash tanks in line', whole: true, atLeast: 1, atMost: 20 },
    washLitresPerSquareMetre: { kind: 'number', unit: 'L/m²', says: 'clean water for each area of film', atLeast: 0 },
    carryLitresPerSquareMetre: { kind: 'number', unit: 'L/m²', says: 'liquid that film carries from tank to tank', above: 0 },
    inGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'salt in the liquid that film brings to the first tank', atLeast: 0 },
  },
  outputs: {
    outGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'salt in the liquid that film takes out of the last tank' },
    ratio: { kind: 'number', unit: '1', says: 'wash water to carry-over' },
    splitOutGramsPerLitre: { kind: 'number', unit: 'g/L', says: 'the same, were the water shared out fresh to all tanks instead' },
  },
  formula: 'out = in ÷ (1 + r + r² + … + rᴺ), r = wash water ÷ carry-over; water shared out fresh: out = in ÷ (1 + r ÷ N)ᴺ',
  source: 'steady balance of each tank; Kremser form of it, from memory',
  domain: 'Steady state, ideal mixing, clean water. The time that salt needs to leave the gelatine is neglected: a real wash is never better than this.',
  example: {
    inputs: { stages: 3, washLitresPerSquareMetre: 0.8, carryLitresPerSquareMetre: 0.04, inGramsPerLitre: 150 },
    result: { outGramsPerLitre: 0.017813, splitOutGramsPerLitre: 0.33287 },
    tolerance: 5e-6,
    source: 'solved as a linear system of tank balances',
  },
  run: ({ stages, washLitresPerSquareMetre, carryLitresPerSquareMetre, inGramsPerLitre }) => {
    const ratio = washLitresPerSquareMetre / carryLitresPerSquareMetre
    return {
      outGramsPerLitre: inGramsPerLitre * carriedShare({ stages, ratio }),
      ratio,
      splitOutGramsPerLitre: inGramsPerLitre * (1 + ratio / stages) ** -stages,
    }
  },
  steps: ({ stages, inGramsPerLitre }, { ratio, outGramsPerLitre, splitOutGramsPerLitre }) => [
    { says: 'wash water to carry-over, r', formula: 'wash water ÷ carry-over', value: ratio, unit: '1' },
    { says: `salt that comes in`, value: inGramsPerLitre, unit: 'g/L' },
    { says: `salt left after ${stages} tanks`, formula: `in ÷ (1 + r + … + r^${stages})`, value: outGramsPerLitre, unit: 'g/L' },
    { says: 'were the water shared out fresh to all tanks', formula: `in ÷ (1 + r ÷ ${stages})^${stages}`, value: splitOutGramsPerLitre, unit: 'g/L' },
  ],
})
