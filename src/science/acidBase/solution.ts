import { factsOf, gramsPerMoleOf, type Substance } from '../substances.ts'
import type { Form } from '../substances-table.ts'
import { noAnswer } from '../refusal.ts'
import { acidOrder } from './medium.ts'

/** What one litre holds, all of it linear in what was put in: solutions mix by adding their parts. */
export interface Solution {
  /** mol/L of each acid–base system, in `acidOrder`, whatever its forms. */
  totals: readonly number[]
  /** Net charge of the ions that take no part in acid–base equilibria, mol/L. */
  strongCharge: number
  /** Σ c z² of the same ions, mol/L: twice their share of the ionic strength. */
  strongSquares: number
}

export interface Quantity {
  substance: Substance
  form?: Form | undefined
  gramsPerLitre?: number | undefined
  molPerLitre?: number | undefined
}

export const pureWater: Solution = { totals: acidOrder.map(() => 0), strongCharge: 0, strongSquares: 0 }

/** One mol of a substance in a litre. `field` names the input to blame when its acid–base behaviour is not known. */
export const oneMolar = (substance: Substance, field: string): Solution => {
  const { brings } = factsOf(substance)
  if (!brings) throw noAnswer(field, substance, 'a substance whose acid–base constants are known here')
  const { univalentCation = 0, univalentAnion = 0, divalentAnion = 0 } = brings
  return {
    totals: acidOrder.map((system) => brings[system] ?? 0),
    strongCharge: univalentCation - univalentAnion - 2 * divalentAnion,
    strongSquares: univalentCation + univalentAnion + 4 * divalentAnion,
  }
}

/** Σ parts × factor, litre for litre. */
export const combined = (parts: readonly { solution: Solution; times: number }[]): Solution => ({
  totals: acidOrder.map((_, index) => parts.reduce((sum, { solution, times }) => sum + times * solution.totals[index]!, 0)),
  strongCharge: parts.reduce((sum, { solution, times }) => sum + times * solution.strongCharge, 0),
  strongSquares: parts.reduce((sum, { solution, times }) => sum + times * solution.strongSquares, 0),
})

/** A bath as listed; `field` is the name of the list, for refusals. */
export const solutionOf = (bath: readonly Quantity[], field: string): Solution =>
  combined(
    bath.map((quantity, index) => ({ solution: oneMolar(quantity.substance, `${field}[${index}].substance`), times: molPerLitreOf(quantity, `${field}[${index}]`) })),
  )

export const molPerLitreOf = ({ substance, form, gramsPerLitre, molPerLitre }: Quantity, field: string): number => {
  const gramsPerMole = gramsPerMoleOf(substance, form ?? 'anhydrous', `${field}.form`)
  return molPerLitre ?? gramsPerLitre! / gramsPerMole
}
