import type { WrittenPlan } from './kit.ts'

const developers = ['neg-1-dev', 'pos-2-dev']
const fixingBaths = ['neg-1-fix', 'neg-1-fix-2', 'pos-2-fix']
const solid = (form = 'anhydrous') => ({ kind: 'solid' as const, form })

/**
 * What stands on the shelf. Safe single doses, per litre of bath, are common practice without a source: about what moves a bath by half
 * of its action limits. Water is no material: a dose of water stands for itself.
 */
export const materials: WrittenPlan['materials'] = [
  {
    id: 'acetic-acid-28', name: 'Acetic acid 28 %', substance: 'aceticAcid', strength: { kind: 'percent', percentByMass: 28, gramsPerMillilitre: 1.0361 },
    unit: 'mL', caution: 'acetic-acid-28', safeSingleDosePerLitre: 15, for: fixingBaths,
  },
  // 100 g in a litre of solution: 100 ÷ 126.04 g/mol.
  { id: 'sulfite-solution', name: 'Sodium sulfite solution, 100 g/L', substance: 'sodiumSulfite', strength: { kind: 'molar', molPerLitre: 0.7934 }, unit: 'mL', caution: 'sodium-sulfite', safeSingleDosePerLitre: 40, for: fixingBaths },
  { id: 'sodium-sulfite', name: 'Sodium sulfite, dry', substance: 'sodiumSulfite', strength: solid(), unit: 'g', caution: 'sodium-sulfite', safeSingleDosePerLitre: 10, for: developers },
  { id: 'borax', name: 'Borax', substance: 'borax', strength: solid('decahydrate'), unit: 'g', caution: 'borax', safeSingleDosePerLitre: 2, for: ['neg-1-dev'] },
  { id: 'boric-acid', name: 'Boric acid', substance: 'boricAcid', strength: solid(), unit: 'g', caution: 'boric-acid', safeSingleDosePerLitre: 2, for: ['neg-1-dev', ...fixingBaths] },
  { id: 'sodium-bicarbonate', name: 'Sodium bicarbonate', substance: 'sodiumBicarbonate', strength: solid(), unit: 'g', caution: 'sodium-bicarbonate', safeSingleDosePerLitre: 3, for: ['pos-2-dev'] },
  { id: 'sodium-carbonate', name: 'Sodium carbonate, dry', substance: 'sodiumCarbonate', strength: solid(), unit: 'g', caution: 'sodium-carbonate', safeSingleDosePerLitre: 5, for: ['pos-2-dev'] },
  { id: 'potassium-bromide', name: 'Potassium bromide', substance: 'potassiumBromide', strength: solid(), unit: 'g', caution: 'potassium-bromide', safeSingleDosePerLitre: 0.5, for: developers },
  { id: 'metol', name: 'Metol', substance: 'metol', strength: solid(), unit: 'g', caution: 'metol', safeSingleDosePerLitre: 0.5, for: developers },
  { id: 'hydroquinone', name: 'Hydroquinone', substance: 'hydroquinone', strength: solid(), unit: 'g', caution: 'hydroquinone', safeSingleDosePerLitre: 1, secondPerson: true, for: developers },
  { id: 'potassium-alum', name: 'Potassium alum', substance: 'potassiumAlum', strength: solid('dodecahydrate'), unit: 'g', caution: 'potassium-alum', safeSingleDosePerLitre: 5, for: fixingBaths },
  // 600 g of crystals in a litre of solution: 600 ÷ 248.18 g/mol.
  { id: 'thiosulfate-solution', name: 'Thiosulfate solution, 600 g/L', substance: 'sodiumThiosulfate', strength: { kind: 'molar', molPerLitre: 2.4176 }, unit: 'mL', caution: 'sodium-thiosulfate', safeSingleDosePerLitre: 40, for: fixingBaths },
]
