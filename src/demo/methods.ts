import type { WrittenPlan } from './kit.ts'

/**
 * Titrations as they are worked at the bench. Equivalent masses follow from the molar masses: sulfite 126.04 ÷ 2 (iodine takes two
 * electrons), thiosulfate crystals 248.18 ÷ 1, bromide 119.00 ÷ 1, hydroquinone 110.11 ÷ 2, borax crystals 381.36 ÷ 2, carbonate to
 * bicarbonate and on to carbonic acid 105.99 ÷ 2, metol 344.38 ÷ 4 (two of the base in the sulfate, two electrons each). Sample sizes and
 * steps are from memory.
 */
const extraction = [
  { says: 'No flame, no hot plate, no ordinary phone near the solvent; hood on.' },
  { says: '25.0 mL of the bath to pH 8.5; extract twice with ethyl acetate; let it part.', seconds: 300 },
  { says: 'Wash the extract, take it up in dilute acid, titrate with 0.1 N ceric sulfate.' },
]

export const methods: WrittenPlan['methods'] = [
  {
    id: 'sulfite', name: 'Sulfite by iodine', caution: 'iodine', calculation: 'titration.backConcentration',
    given: { excessMillilitres: 50, excessNormality: 0.1, backNormality: 0.1, sampleMillilitres: 5, equivalentMassGramsPerEquivalent: 63.02 },
    steps: [
      { says: 'Fume hood on. 50.0 mL of 0.1 N iodine into a flask, then 5 mL of acetic acid 28 %.' },
      { says: 'Run in 5.00 mL of the bath, tip under the surface. The sample into iodine, never iodine into an acid sample: that loses sulfur dioxide.', seconds: 30 },
      { says: 'Titrate back with 0.1 N thiosulfate until straw yellow; add starch; on to colourless.' },
      { says: 'Fixing bath: mask thiosulfate with formaldehyde on a second sample and take the difference.' },
    ],
  },
  {
    id: 'thiosulfate', name: 'Thiosulfate by iodine', caution: 'iodine', calculation: 'titration.concentration',
    given: { normality: 0.1, sampleMillilitres: 1, equivalentMassGramsPerEquivalent: 248.18 },
    steps: [
      { says: '1.00 mL of the bath into 100 mL of water; formaldehyde to mask the sulfite; wait.', seconds: 120 },
      { says: 'Acidify with 10 mL of acetic acid 28 %, add starch.' },
      { says: 'Titrate with 0.1 N iodine to the first blue that stays.' },
    ],
  },
  {
    id: 'bromide', name: 'Bromide by silver nitrate', caution: 'silver-nitrate', calculation: 'titration.concentration',
    given: { normality: 0.1, sampleMillilitres: 50, equivalentMassGramsPerEquivalent: 119 },
    steps: [
      { says: 'Fume hood on: acid frees sulfur dioxide from the sample. 50.0 mL of the bath, 10 mL of dilute sulfuric acid; boil off the sulfur dioxide and cool.', seconds: 600 },
      { says: 'Silver electrode in, stirrer on. Titrate with 0.1 N silver nitrate past the jump; key volume and millivolts.' },
    ],
  },
  {
    id: 'hydroquinone', name: 'Hydroquinone by extraction', caution: 'ethyl-acetate', calculation: 'titration.concentration',
    given: { normality: 0.1, sampleMillilitres: 25, equivalentMassGramsPerEquivalent: 55.06 }, steps: extraction,
  },
  {
    id: 'metol', name: 'Metol by extraction', caution: 'ethyl-acetate', calculation: 'titration.concentration',
    given: { normality: 0.1, sampleMillilitres: 25, equivalentMassGramsPerEquivalent: 86.1 }, steps: [...extraction, { says: 'Metol is the second jump: take off what hydroquinone took.' }],
  },
  {
    id: 'borax', name: 'Borax by acid', calculation: 'titration.concentration',
    given: { normality: 0.1, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 190.68 },
    steps: [{ says: 'Hood on: acid frees sulfur dioxide. 10.0 mL of the bath and 50 mL of water.' }, { says: 'Titrate with 0.1 N hydrochloric acid to pH 5.4 on the meter; take off the blank of the sulfite.' }],
  },
  {
    id: 'carbonate', name: 'Carbonate by acid', calculation: 'titration.concentration',
    given: { normality: 0.5, sampleMillilitres: 10, equivalentMassGramsPerEquivalent: 53 },
    steps: [{ says: 'Hood on: acid frees sulfur dioxide. 10.0 mL of the bath and 50 mL of water.' }, { says: 'Titrate with 0.5 N hydrochloric acid to pH 4.3 on the meter; take off the blank of the sulfite.' }],
  },
]
