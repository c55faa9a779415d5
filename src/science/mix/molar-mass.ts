import { calculation } from '../calculation.ts'
import { factsOf, gramsPerMoleOf } from '../substances.ts'
import { form, substance } from './fields.ts'

export const mixMolarMass = calculation({
  id: 'mix.molarMass',
  title: 'Molar mass of a substance',
  inputs: { substance, form: { ...form('crystal form; anhydrous unless it says otherwise'), preset: 'anhydrous' } },
  outputs: { gramsPerMole: { kind: 'number', unit: 'g/mol', says: 'mass of one mol in this form' } },
  formula: 'sum of atomic weights, 18.015 for each crystal water',
  source: 'IUPAC abridged standard atomic weights 2021, from memory',
  domain: 'The forms each substance is sold in. Metol is one amine with half a sulfate (172.19), not the double formula (344.38).',
  example: { inputs: { substance: 'borax', form: 'decahydrate' }, result: { gramsPerMole: 381.36 }, tolerance: 0.005, source: 'IUPAC atomic weights' },
  run: (given) => ({ gramsPerMole: gramsPerMoleOf(given.substance, given.form, 'form') }),
  steps: (given, { gramsPerMole }) => [
    { says: `${factsOf(given.substance).name}, without crystal water`, formula: factsOf(given.substance).formula, value: gramsPerMoleOf(given.substance, 'anhydrous', 'form'), unit: 'g/mol' },
    { says: given.form, value: gramsPerMole, unit: 'g/mol' },
  ],
})
