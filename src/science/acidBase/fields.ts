import { formKeys, substanceKeys } from '../substances.ts'
import { activityModels } from './activity.ts'
import { borateModels } from './medium.ts'

/** Inputs that the acid–base calculations share. */

export const celsius = { kind: 'number', unit: '°C', says: 'temperature of the bath', atLeast: 0, atMost: 60 } as const

export const quantity = {
  kind: 'group',
  says: 'one substance and how much of it a litre holds',
  fields: {
    substance: { kind: 'choice', of: substanceKeys, says: 'substance' },
    form: { kind: 'choice', of: formKeys, says: 'what was weighed; anhydrous unless it says otherwise', optional: true },
    gramsPerLitre: { kind: 'number', unit: 'g/L', says: 'mass in a litre of the bath', atLeast: 0, atMost: 1000, optional: true },
    molPerLitre: { kind: 'number', unit: 'mol/L', says: 'amount in a litre of the bath', atLeast: 0, atMost: 20, optional: true },
  },
  exactlyOne: [['gramsPerLitre', 'molPerLitre']],
} as const

export const bath = { kind: 'list', of: quantity, atMost: 40, says: 'what the bath holds; an empty list is pure water' } as const

export const activity = {
  kind: 'choice',
  of: activityModels,
  preset: 'daviesCapped',
  says: 'activity coefficients: Davies with the ionic strength in its formula capped at 0.5 mol/L, Davies as written, or all 1',
} as const

export const borate = {
  kind: 'choice',
  of: borateModels,
  preset: 'monomers',
  says: 'borate as B(OH)₃ and B(OH)₄⁻ only, or with the dimer and trimer anions as well',
} as const
