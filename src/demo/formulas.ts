import type { WrittenPlan } from './kit.ts'

const setBy = 'Invented for the demo, after public formulas'

/** What the invented laboratory mixes by itself. The baths are those of its machines; the names are its own. */
export const formulas: NonNullable<WrittenPlan['formulas']> = [
  {
    id: 'negative-developer', name: 'Harbour negative developer', for: 'neg-1-dev', litres: 100, startWaterFraction: 0.75, startCelsius: 50, setBy,
    steps: [
      { substance: 'metol', gramsPerLitre: 1.5 },
      { substance: 'sodiumSulfite', gramsPerLitre: 75 },
      { substance: 'hydroquinone', gramsPerLitre: 1.5 },
      { substance: 'borax', form: 'decahydrate', gramsPerLitre: 4.5 },
      { substance: 'potassiumBromide', gramsPerLitre: 0.7 },
    ],
  },
  {
    id: 'positive-developer', name: 'Harbour positive developer', for: 'pos-2-dev', litres: 120, startWaterFraction: 0.75, startCelsius: 50, setBy,
    steps: [
      { substance: 'metol', gramsPerLitre: 0.5 },
      { substance: 'sodiumSulfite', gramsPerLitre: 40 },
      { substance: 'hydroquinone', gramsPerLitre: 3 },
      { substance: 'sodiumCarbonate', gramsPerLitre: 20 },
      { substance: 'potassiumBromide', gramsPerLitre: 2.2 },
    ],
  },
  {
    id: 'hardening-fixing-bath', name: 'Lane hardening fixing bath', for: 'neg-1-fix', litres: 64, startWaterFraction: 0.6, startCelsius: 50, setBy,
    steps: [
      { substance: 'sodiumThiosulfate', form: 'pentahydrate', gramsPerLitre: 240 },
      { substance: 'sodiumSulfite', gramsPerLitre: 12 },
      { substance: 'aceticAcid', material: 'acetic-acid-28', millilitresPerLitre: 48 },
      { substance: 'boricAcid', gramsPerLitre: 7.5 },
      { substance: 'potassiumAlum', form: 'dodecahydrate', gramsPerLitre: 15 },
    ],
    // A fixing bath has no check of its specific gravity in the plan: the new mix has figures of its own. Invented.
    limits: { pH: { aim: 4.5, warningLow: 4.3, warningHigh: 4.7, actionLow: 4.2, actionHigh: 4.8 }, specificGravity: { aim: 1.13, warningLow: 1.12, warningHigh: 1.14, actionLow: 1.115, actionHigh: 1.145 } },
  },
]
