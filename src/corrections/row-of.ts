import { isDeveloper, isFixing } from './bath-now.ts'
import { foundBy } from './lookup.ts'
import type { Row, When } from './row.ts'
import { rows } from './rows.ts'
import type { Situation } from './situation.ts'
import { stripSides } from './strip-sides.ts'

/** The rows of the trade's table that fit an exception, the most telling first: one that asks for more stands before one that asks for less. */
export const rowsOf = (situation: Situation): Row[] =>
  rows.filter((row) => fits(situation, row.when)).sort((a, b) => asks(b.when) - asks(a.when))

const asks = ({ of, side, paired, strip }: When): number => (of ? 1 : 0) + (side ? 1 : 0) + (paired ? 2 : 0) + (strip ? Object.keys(strip).length : 0)

const fits = (situation: Situation, when: When): boolean => {
  const { check, station, judged } = situation
  const isHere = when.at.includes(station.kind) || (when.at.includes('fixing') && isFixing(station)) || (when.at.includes('developer') && isDeveloper(station))
  if (!isHere) return false
  if (when.look) return check.kind === 'look'
  if (when.strip) return check.kind === 'strip' && stripFits(situation, when.strip)
  if (check.kind !== 'reading' || check.quantity !== when.quantity) return false
  if (when.of !== undefined && !(typeof when.of === 'string' ? [when.of] : when.of).includes(check.of ?? '')) return false
  if (when.side && judged?.side !== when.side) return false
  return !when.paired || pairFits(situation, when.paired)
}

const pairFits = ({ lab, plan, check, now, station }: Situation, paired: NonNullable<When['paired']>): boolean => {
  const named = check.kind === 'reading' ? check.pairedWith : undefined
  const other = plan.checks.find(
    (it) => it.kind === 'reading' && it.quantity === paired.quantity && (it.id === named || (it.station === station.id && (named === undefined || it.pairedWith === check.id))),
  )
  const found = other?.kind === 'reading' ? foundBy(lab, other, now) : undefined
  if (!found) return false
  const isOut = found.judged.verdict !== 'IN'
  return paired.is === 'in' ? !isOut : isOut && (!paired.side || found.judged.side === paired.side)
}

const stripFits = (situation: Situation, wanted: NonNullable<When['strip']>): boolean => {
  const sides = stripSides(situation)
  return Object.entries(wanted).every(([figure, side]) => sides[figure] === side)
}
