import type { DoseUnit } from '../../corrections/sealed-dose.ts'
import { numberText } from '../format.ts'

export interface ShownAmount {
  /** As it is read at arm's length, and as it is kept when it is poured as shown. */
  text: string
  amount: number
  unit: DoseUnit
}

/** As a jug or a balance reads it: three figures, in litres or kilograms from a thousand on. */
export const shownAmount = (amount: number, unit: DoseUnit): ShownAmount => {
  if (unit === 'mL' && amount >= 1000) return shownAmount(amount / 1000, 'L')
  if (unit === 'g' && amount >= 1000) return shownAmount(amount / 1000, 'kg')
  const rounded = Number(amount.toPrecision(3))
  const decimals = rounded >= 100 ? 0 : rounded >= 10 ? 1 : 2
  return { text: numberText(rounded, decimals), amount: Number(rounded.toFixed(decimals)), unit }
}
