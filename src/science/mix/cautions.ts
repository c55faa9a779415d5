import { factsOf, type Substance } from '../substances.ts'
import { isAcid, isAlum, isThiosulfate } from './order.ts'

interface Caution {
  when: (substances: readonly Substance[]) => boolean
  says: string
}

const carbonates: readonly Substance[] = ['sodiumCarbonate', 'potassiumCarbonate', 'sodiumBicarbonate']
const ammoniumSalts: readonly Substance[] = ['ammoniumThiosulfate', 'ammoniumChloride']
const isHydroxide = (substance: Substance): boolean => factsOf(substance).nature === 'hydroxide'
const has =
  (...tests: ((substance: Substance) => boolean)[]) =>
  (substances: readonly Substance[]): boolean =>
    tests.every((test) => substances.some(test))

/** Short warnings for the mixing sheet; the cards of the safety room say the rest. */
const cautions: readonly Caution[] = [
  { when: has((it) => ['acid', 'strongAcid'].includes(factsOf(it).nature)), says: 'Acid into water, never water into acid; slowly, stirring, exhaust on, face shield and gloves.' },
  { when: has(isThiosulfate, isAcid), says: 'Sulfite must be in and dissolved before the acid: acid frees sulfur and sulfur dioxide from thiosulfate.' },
  { when: has(isAlum), says: 'Alum only once the acid is in, in cooled solution; never solid thiosulfate into a bath with alum.' },
  { when: has(isHydroxide), says: 'Hydroxide heats water: little by little into cold water, never water onto it; no aluminium or zinc vessel.' },
  { when: has(isHydroxide, (it) => ammoniumSalts.includes(it)), says: 'Hydroxide drives ammonia out of ammonium salts: exhaust on.' },
  { when: has((it) => carbonates.includes(it), isAcid), says: 'Acid froths with carbonate: small portions, room in the tank.' },
  { when: has((it) => ['metol', 'hydroquinone', 'phenidone'].includes(it)), says: 'Developing agents sensitise skin: gloves, no dust in the air, none on clothes.' },
  { when: () => true, says: 'The product’s safety data sheet, local codes and licensed or trained persons decide.' },
]

export const cautionsFor = (substances: readonly Substance[]): string[] => cautions.filter(({ when }) => when(substances)).map(({ says }) => says)
