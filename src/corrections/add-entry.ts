import type { MaterialId } from '../plan/ids.ts'
import { isOverPoured, jugReads } from '../projections/over-poured.ts'
import type { Add } from '../record/kinds/add.ts'
import type { CardNeeded } from '../safety/needed.ts'
import { sameUnit } from './dose-limits.ts'
import type { Remedy } from './remedy.ts'
import { say, type Say } from './say.ts'
import type { DoseUnit, Revealed, RevealAsked } from './sealed-dose.ts'

export interface Poured {
  amount: number
  unit: DoseUnit
  /** Exactly what was keyed. */
  keyed: string
}

export interface AddAsked extends RevealAsked {
  poured: Poured
  lot?: string | undefined
  /** Why another amount was poured than was planned, or why something else was given than the trade's table offers. */
  overruled?: string | undefined
  /** It is in the bath already, and nobody else has looked at it. */
  pouredAlone?: boolean
}

export type AddMade = { ok: true; data: Add } | { ok: false; needs: readonly CardNeeded[]; problems: readonly Say[] }

/**
 * What is recorded of a dose that was poured. It is made of a remedy and its confirmations only: where a caution is missing there is no entry,
 * as there was no amount. What was truly poured is always taken, with the reason where it is not what was planned.
 */
export const addOf = (remedy: Remedy, asked: AddAsked): AddMade => {
  const { dose, wait } = remedy
  if (!dose || remedy.refused) return { ok: false, needs: [], problems: [say('notOffered')] }
  const revealed = dose.amount.reveal(asked)
  if (!revealed.ok) return { ok: false, needs: revealed.needs, problems: [] }
  const { poured, lot, overruled, person, secondPerson } = asked
  const isAlone = dose.secondPerson.required && secondPerson === undefined
  const plannedAmount = dose.material === 'water' ? litres(revealed) : sameUnit(revealed, baseUnit(revealed.unit))
  const pouredAmount = dose.material === 'water' ? litres(poured) : sameUnit(poured, baseUnit(revealed.unit))
  const isOther = Math.abs(pouredAmount - plannedAmount) > jugReads * plannedAmount
  const isOverruled = isOther || (isAlone && asked.pouredAlone) || remedy.code === 'own'
  const problems = [
    ...(isAlone && !asked.pouredAlone ? [say('secondPersonNeeded')] : []),
    ...(secondPerson !== undefined && secondPerson === person ? [say('secondPersonIsTheFirst')] : []),
    ...(isOverruled && !overruled?.trim() ? [say(isOther || isAlone ? 'sayWhy' : 'sayWhyOwn')] : []),
    ...(pouredAmount > 0 ? [] : [say('nothingPoured')]),
  ]
  if (problems.length) return { ok: false, needs: [], problems }
  const { model, working, limits } = revealed
  const isOver = isOverPoured({ planned: revealed, poured })
  const beyond = [...(above(pouredAmount, limits?.single) ? ['aboveSafeSingleDose'] : []), ...(above(pouredAmount, limits?.room) ? ['noHeadroom'] : [])]
  const predicted = model && ofPoured(model, pouredAmount / plannedAmount)
  return {
    ok: true,
    data: {
      station: remedy.station,
      material: dose.material as MaterialId | 'water',
      portion: dose.portion,
      planned: { amount: revealed.amount, unit: revealed.unit },
      poured,
      mixSeconds: wait?.seconds ?? 0,
      ...(isOver || dose.rechecks > 1 ? { rechecks: Math.max(2, dose.rechecks) } : {}),
      ...(beyond.length ? { beyond } : {}),
      ...(remedy.exception ? { exception: remedy.exception } : {}),
      ...(lot ? { lot } : {}),
      ...(revealed.cautions[0] ? { caution: revealed.cautions[0] } : {}),
      ...(secondPerson ? { secondPerson } : {}),
      ...(isOverruled && overruled ? { overruled } : {}),
      ...(predicted ? { predicted } : {}),
      ...(working ? { working: { calculation: working.calculation, inputs: working.inputs, result: working.result } } : {}),
    },
  }
}

const above = (amount: number, most: number | undefined): boolean => most !== undefined && amount > most * (1 + jugReads)

/** What the model says of another amount than was planned: straight between its own points, beyond twice the amount prolonged. */
const ofPoured = (model: NonNullable<Revealed['model']>, share: number): NonNullable<Revealed['model']> => {
  const { from, to, toTwice = 2 * to - from } = model
  const at = (times: number): number => (times <= 1 ? from + (to - from) * times : to + (toTwice - to) * (times - 1))
  return { ...model, to: at(share), ...(model.toTwice === undefined ? {} : { toTwice: at(2 * share) }) }
}

const baseUnit = (unit: DoseUnit): 'mL' | 'g' => (unit === 'mL' || unit === 'L' ? 'mL' : 'g')
const litres = (given: { amount: number; unit: DoseUnit }): number => sameUnit(given, 'mL') / 1000
