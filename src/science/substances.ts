import { noAnswer } from './refusal.ts'
import { molarMassOf, waterGramsPerMole } from './substances-atoms.ts'
import { substances, type Form, type SubstanceFacts } from './substances-table.ts'

export type Substance = keyof typeof substances

export const substanceKeys = Object.keys(substances) as Substance[]

export const formKeys: readonly Form[] = ['anhydrous', 'monohydrate', 'dihydrate', 'pentahydrate', 'heptahydrate', 'decahydrate', 'dodecahydrate']

/** Mol of crystal water in a mol of each form. */
const crystalWater: Readonly<Record<Form, number>> = {
  anhydrous: 0,
  monohydrate: 1,
  dihydrate: 2,
  pentahydrate: 5,
  heptahydrate: 7,
  decahydrate: 10,
  dodecahydrate: 12,
}

export const factsOf = (substance: Substance): SubstanceFacts => substances[substance]

/**
 * Molar mass in g/mol of a substance in a form. `field` names the input to blame when the substance has no such form.
 * @example gramsPerMoleOf('borax', 'decahydrate', 'form') // 381.36
 */
export const gramsPerMoleOf = (substance: Substance, form: Form, field: string): number => {
  const { formula, forms } = factsOf(substance)
  if (!forms.includes(form)) throw noAnswer(field, form, `a form of ${substance}: ${forms.join(', ')}`)
  return molarMassOf(formula) + crystalWater[form] * waterGramsPerMole
}
