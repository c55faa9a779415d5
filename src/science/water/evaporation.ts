import { calculation } from '../calculation.ts'
import { noAnswer } from '../refusal.ts'

export const waterEvaporation = calculation({
  id: 'water.evaporation',
  title: 'Water to make up evaporation',
  inputs: {
    litres: { kind: 'number', unit: 'L', says: 'bath in the tank now', above: 0, atMost: 1_000_000 },
    specificGravity: { kind: 'number', unit: '1', says: 'found, at the hydrometer’s temperature', atLeast: 1, atMost: 2 },
    aimSpecificGravity: { kind: 'number', unit: '1', says: 'of the bath as mixed, at the same temperature', above: 1, atMost: 2 },
  },
  outputs: { waterLitres: { kind: 'number', unit: 'L', says: 'water that brings the specific gravity to the aim' } },
  formula: 'w = V (SG − aim) ÷ (aim − 1)',
  source: 'mass balance: nothing but water was lost; volumes add up',
  domain:
    'Only evaporation: a bath that is heavy from carry-over or over-replenishment is spoilt by water. Check the level: evaporation lowers it. Volumes of water and bath are taken to add up (within 0.3 % for working strengths).',
  example: { inputs: { litres: 500, specificGravity: 1.09, aimSpecificGravity: 1.085 }, result: { waterLitres: 29.41 }, tolerance: 0.005, source: 'worked out' },
  run: ({ litres, specificGravity, aimSpecificGravity }) => {
    if (specificGravity < aimSpecificGravity)
      throw noAnswer('specificGravity', specificGravity, `at least the aim of ${aimSpecificGravity}: a light bath has not lost water`)
    return { waterLitres: (litres * (specificGravity - aimSpecificGravity)) / (aimSpecificGravity - 1) }
  },
  steps: ({ litres, specificGravity, aimSpecificGravity }, { waterLitres }) => [
    { says: 'too heavy by', formula: 'SG − aim', value: specificGravity - aimSpecificGravity, unit: '1' },
    { says: 'weight that dissolved matter adds at the aim', formula: 'aim − 1', value: aimSpecificGravity - 1, unit: '1' },
    { says: 'water', formula: 'V × (SG − aim) ÷ (aim − 1)', value: waterLitres, unit: 'L' },
    { says: 'volume after topping up', formula: 'V + w', value: litres + waterLitres, unit: 'L' },
  ],
})
