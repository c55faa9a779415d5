import { calculation } from '../calculation.ts'
import { below } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'

export const bathTopUp = calculation({
  id: 'bath.topUp',
  title: 'Top-up to a level',
  inputs: {
    litres: { kind: 'number', unit: 'L', says: 'what the bath holds at the full mark', above: 0 },
    levelFraction: { kind: 'number', unit: '1', says: 'level now, as a share of the full mark', atLeast: 0, atMost: 1.5 },
    aimLevelFraction: { kind: 'number', unit: '1', says: 'level wanted', atLeast: 0, atMost: 1.5 },
  },
  outputs: { addLitres: { kind: 'number', unit: 'L', says: 'liquid to add' } },
  formula: 'add = litres at the full mark × (level wanted − level now)',
  source: 'geometry',
  domain: 'A tank with upright walls, read with the circulation in its usual state. Water makes good evaporation only; for what film carried out, add replenisher.',
  example: { inputs: { litres: 600, levelFraction: 0.94, aimLevelFraction: 1 }, result: { addLitres: 36 }, tolerance: 1e-9, source: 'worked by hand' },
  run: ({ litres, levelFraction, aimLevelFraction }) => {
    if (below(aimLevelFraction, levelFraction))
      throw noAnswer('aimLevelFraction', aimLevelFraction, `a number, the level now or more: ${levelFraction}`)
    return { addLitres: litres * Math.max(0, aimLevelFraction - levelFraction) }
  },
  steps: ({ litres, levelFraction, aimLevelFraction }, { addLitres }) => [
    { says: 'short of the level wanted by', formula: `${aimLevelFraction} − ${levelFraction}`, value: aimLevelFraction - levelFraction, unit: '1' },
    { says: 'to add', formula: `× ${litres} L`, value: addLitres, unit: 'L' },
  ],
})
