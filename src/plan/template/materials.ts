import type { StationKind } from '../machine.ts'
import type { WrittenPlan } from '../written-plan.ts'
import type { Typical } from './kit.ts'

type Written = Omit<WrittenPlan['materials'][number], 'for'> & { into: readonly StationKind[]; only?: Typical['stock'] }

const dry = (form = 'anhydrous') => ({ kind: 'solid' as const, form })

/**
 * What stands on most shelves, so that a first correction can be worked out. Densities after the CRC Handbook (acetic acid 28 %: 1.0361 g/mL at 20 °C, from
 * memory). Safe single doses per litre of bath are common practice without a source: about what moves a bath by half of its action limits.
 */
export const typicalMaterials: readonly Written[] = [
  { id: 'acetic-acid-28', name: 'Acetic acid 28 %', substance: 'aceticAcid', strength: { kind: 'percent', percentByMass: 28, gramsPerMillilitre: 1.0361 }, unit: 'mL', caution: 'acetic-acid-28', safeSingleDosePerLitre: 15, into: ['fixing'] },
  // 100 g in a litre of solution: 100 ÷ 126.04 g/mol.
  { id: 'sulfite-solution', name: 'Sodium sulfite solution, 100 g/L', substance: 'sodiumSulfite', strength: { kind: 'molar', molPerLitre: 0.7934 }, unit: 'mL', caution: 'sodium-sulfite', safeSingleDosePerLitre: 40, into: ['fixing'] },
  { id: 'sodium-sulfite', name: 'Sodium sulfite, dry', substance: 'sodiumSulfite', strength: dry(), unit: 'g', caution: 'sodium-sulfite', safeSingleDosePerLitre: 10, into: ['developer'] },
  { id: 'borax', name: 'Borax', substance: 'borax', strength: dry('decahydrate'), unit: 'g', caution: 'borax', safeSingleDosePerLitre: 2, into: ['developer'], only: 'negative' },
  { id: 'boric-acid', name: 'Boric acid', substance: 'boricAcid', strength: dry(), unit: 'g', caution: 'boric-acid', safeSingleDosePerLitre: 2, into: ['developer', 'fixing'], only: 'negative' },
  { id: 'sodium-carbonate', name: 'Sodium carbonate, dry', substance: 'sodiumCarbonate', strength: dry(), unit: 'g', caution: 'sodium-carbonate', safeSingleDosePerLitre: 5, into: ['developer'], only: 'positive' },
  { id: 'sodium-bicarbonate', name: 'Sodium bicarbonate', substance: 'sodiumBicarbonate', strength: dry(), unit: 'g', caution: 'sodium-bicarbonate', safeSingleDosePerLitre: 3, into: ['developer'], only: 'positive' },
  { id: 'potassium-bromide', name: 'Potassium bromide', substance: 'potassiumBromide', strength: dry(), unit: 'g', caution: 'potassium-bromide', safeSingleDosePerLitre: 0.5, into: ['developer'] },
]
