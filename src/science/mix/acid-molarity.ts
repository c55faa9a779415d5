import { calculation } from '../calculation.ts'

export const mixAcidMolarity = calculation({
  id: 'mix.acidMolarity',
  title: 'Molarity from percent by mass and density',
  inputs: {
    percentByMass: { kind: 'number', unit: '%', says: 'strength by mass', above: 0, atMost: 100 },
    gramsPerMillilitre: { kind: 'number', unit: 'g/mL', says: 'density', atLeast: 0.5, atMost: 3 },
    gramsPerMole: { kind: 'number', unit: 'g/mol', says: 'molar mass', above: 0, atMost: 10_000 },
  },
  outputs: { molPerLitre: { kind: 'number', unit: 'mol/L', says: 'strength' } },
  formula: 'mol/L = 10 × % × ρ ÷ M',
  source: 'definition',
  domain: 'Percent and density of the same bottle at the same temperature.',
  example: { inputs: { percentByMass: 28, gramsPerMillilitre: 1.0361, gramsPerMole: 60.05 }, result: { molPerLitre: 4.83 }, tolerance: 0.005, source: 'acetic acid 28 %, density Perry (from memory)' },
  run: ({ percentByMass, gramsPerMillilitre, gramsPerMole }) => ({ molPerLitre: (10 * percentByMass * gramsPerMillilitre) / gramsPerMole }),
  steps: ({ percentByMass, gramsPerMillilitre }, { molPerLitre }) => [
    { says: 'mass of the substance in a litre', formula: '10 × % × ρ', value: 10 * percentByMass * gramsPerMillilitre, unit: 'g/L' },
    { says: 'strength', formula: 'g/L ÷ M', value: molPerLitre, unit: 'mol/L' },
  ],
})
