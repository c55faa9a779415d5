import { calculation } from '../calculation.ts'
import { factsOf, gramsPerMoleOf } from '../substances.ts'
import { form, substance } from './fields.ts'

export const mixHydrate = calculation({
  id: 'mix.hydrate',
  title: 'One crystal form in place of another',
  inputs: {
    substance,
    fromForm: form('the form in the formula'),
    toForm: form('the form on the shelf'),
    grams: { kind: 'number', unit: 'g', says: 'mass in the formula', atLeast: 0, atMost: 1e9 },
  },
  outputs: { grams: { kind: 'number', unit: 'g', says: 'mass to weigh of the form on the shelf' } },
  formula: 'grams × M(to) ÷ M(from)',
  source: 'molar masses from IUPAC atomic weights 2021, from memory',
  domain: 'The forms each substance is sold in; crystals that have lost or taken up water weigh wrong.',
  example: {
    inputs: { substance: 'sodiumThiosulfate', fromForm: 'pentahydrate', toForm: 'anhydrous', grams: 240 },
    result: { grams: 152.89 },
    tolerance: 0.01,
    source: 'exact factor 0.6370',
  },
  run: ({ substance: key, fromForm, toForm, grams }) => ({ grams: (grams * gramsPerMoleOf(key, toForm, 'toForm')) / gramsPerMoleOf(key, fromForm, 'fromForm') }),
  steps: ({ substance: key, fromForm, toForm }, { grams }) => [
    { says: `molar mass of ${factsOf(key).name}, ${fromForm}`, value: gramsPerMoleOf(key, fromForm, 'fromForm'), unit: 'g/mol' },
    { says: `molar mass of ${factsOf(key).name}, ${toForm}`, value: gramsPerMoleOf(key, toForm, 'toForm'), unit: 'g/mol' },
    { says: 'factor', formula: 'M(to) ÷ M(from)', value: gramsPerMoleOf(key, toForm, 'toForm') / gramsPerMoleOf(key, fromForm, 'fromForm'), unit: '1' },
    { says: 'to weigh', formula: 'grams × factor', value: grams, unit: 'g' },
  ],
})
