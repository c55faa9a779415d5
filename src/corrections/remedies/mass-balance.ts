import type { Material } from '../../plan/material.ts'
import { gramsPerMoleOf, type Substance } from '../../science/substances.ts'
import type { Form } from '../../science/substances-table.ts'
import type { Situation } from '../situation.ts'
import type { ComputedDose } from './dose.ts'

/**
 * Grams of a constituent, in the form in which the bath's strength is stated, that one unit (g or mL) of a material brings.
 * g of solid × molar mass stated ÷ molar mass weighed; for a solution its strength. Molar masses: IUPAC 2021 abridged weights.
 */
export const gramsPerUnit = ({ substance, strength }: Pick<Material, 'substance' | 'strength'>, stated: Form): number => {
  const name = substance as Substance
  const statedMass = gramsPerMoleOf(name, stated, 'form')
  switch (strength.kind) {
    case 'solid':
      return statedMass / gramsPerMoleOf(name, strength.form as Form, 'form')
    case 'molar':
      return (strength.molPerLitre * statedMass) / 1000
    case 'percent':
      return (strength.percentByMass / 100) * strength.gramsPerMillilitre * (statedMass / gramsPerMoleOf(name, 'anhydrous', 'form'))
  }
}

/** The form in which the plan states a constituent of this bath. */
export const statedForm = ({ station }: Pick<Situation, 'station'>, substance: string): Form =>
  ((station.bath?.constituents ?? []).find((it) => it.substance === substance)?.form ?? 'anhydrous') as Form

/**
 * (aim − found) × litres ÷ what a unit brings: one constituent by itself, the material's own volume neglected (0.5 L of a 20 % solution in 500 L: 0.1 %).
 * Plain mass balance.
 */
export const massBalanceDose = (
  situation: Situation,
  material: Material,
  { found, aim, factor }: { found: number; aim: number; factor: number },
): ComputedDose => {
  const { bath } = situation
  if (!bath) throw new Error('a dose needs a bath')
  const brings = gramsPerUnit(material, statedForm(situation, material.substance))
  const whole = ((aim - found) * bath.litres) / brings
  return {
    whole,
    firstShare: 1,
    predicts: { quantity: 'concentration', from: found, after: (amount) => found + (amount * brings) / bath.litres },
    working: {
      calculation: 'massBalance',
      inputs: { foundGramsPerLitre: found, aimGramsPerLitre: aim, litres: bath.litres, gramsPerUnit: brings, responseFactor: factor },
      result: { amount: whole / factor, unit: material.unit },
      steps: [
        { says: 'found', value: found, unit: 'g/L' },
        { says: 'aim', value: aim, unit: 'g/L' },
        { says: 'missing in the bath', formula: '(aim − found) × litres', value: (aim - found) * bath.litres, unit: 'g' },
        { says: `what 1 ${material.unit} of the material brings`, value: brings, unit: 'g' },
        { says: 'response this bath has shown before', formula: 'observed ÷ predicted change', value: factor, unit: '1' },
        { says: 'amount', formula: 'missing ÷ what one brings ÷ response', value: whole / factor, unit: material.unit },
      ],
    },
  }
}
