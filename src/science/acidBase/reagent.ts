import { Refusal, noAnswer } from '../refusal.ts'
import { factsOf, formKeys, gramsPerMoleOf, substanceKeys, type Substance } from '../substances.ts'
import type { Form } from '../substances-table.ts'

export const reagent = {
  kind: 'group',
  says: 'what is added: a solution by its strength, or a solid by its form',
  fields: {
    substance: { kind: 'choice', of: substanceKeys, says: 'substance' },
    molPerLitre: { kind: 'number', unit: 'mol/L', says: 'strength of the solution', above: 0, atMost: 30, optional: true },
    percentByMass: { kind: 'number', unit: '%', says: 'strength of the solution by mass', above: 0, atMost: 100, optional: true },
    gramsPerMillilitre: { kind: 'number', unit: 'g/mL', says: 'density of the solution; goes with percentByMass', atLeast: 0.5, atMost: 2.5, optional: true },
    form: { kind: 'choice', of: formKeys, says: 'the solid that is weighed', optional: true },
  },
  exactlyOne: [['molPerLitre', 'percentByMass', 'form']],
} as const

export interface GivenReagent {
  substance: Substance
  molPerLitre?: number | undefined
  percentByMass?: number | undefined
  gramsPerMillilitre?: number | undefined
  form?: Form | undefined
}

export interface Reagent {
  unit: 'mL' | 'g'
  /** mL or g for one mol. */
  amountPerMole: number
  /** Litres that one mol adds to the bath; none for a solid, whose volume is neglected (about 0.4 mL a gram). */
  litresPerMole: number
}

/** A reagent’s strength in one shape. Refuses a form that the substance has not, a liquid as a solid, and a percentage without its density. */
export const reagentOf = ({ substance, molPerLitre, percentByMass, gramsPerMillilitre, form }: GivenReagent): Reagent => {
  if (form !== undefined) {
    if (factsOf(substance).liquid) throw noAnswer('reagent.form', form, `for ${substance}: molPerLitre, or percentByMass with gramsPerMillilitre`)
    if (gramsPerMillilitre !== undefined) throw noAnswer('reagent.gramsPerMillilitre', gramsPerMillilitre, 'only beside percentByMass')
    return { unit: 'g', amountPerMole: gramsPerMoleOf(substance, form, 'reagent.form'), litresPerMole: 0 }
  }
  if (molPerLitre !== undefined) {
    if (gramsPerMillilitre !== undefined) throw noAnswer('reagent.gramsPerMillilitre', gramsPerMillilitre, 'only beside percentByMass')
    return { unit: 'mL', amountPerMole: 1000 / molPerLitre, litresPerMole: 1 / molPerLitre }
  }
  if (gramsPerMillilitre === undefined)
    throw new Refusal({ code: 'missing', field: 'reagent.gramsPerMillilitre', value: undefined, allowed: 'the density beside percentByMass, 0.5 to 2.5 g/mL' })
  const strength = (10 * percentByMass! * gramsPerMillilitre) / gramsPerMoleOf(substance, 'anhydrous', 'reagent.substance')
  return { unit: 'mL', amountPerMole: 1000 / strength, litresPerMole: 1 / strength }
}
