import type { ReadingCheck } from '../plan/check.ts'
import type { CheckId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judge } from '../plan/limits.ts'
import { above } from '../science/decimal.ts'
import type { Mark } from './checks.ts'
import type { LabState } from './lab-state.ts'

/**
 * What two readings say together that neither says alone.
 * `evaporation`: level low, gravity high — water only, to the mark. `lossOfBath`: level low, gravity in limits — leak, carry-out, or rate too low.
 * `waterIn`: level high, gravity low — leaking coil, wash water back. `wrongMix`: gravity high, level in limits — replenisher over-strength.
 * `weakMix`: gravity low, level in limits — diluted, or an exhausted mix. `overfed`: level high, gravity in limits — rate too high, overflow blocked.
 * `lossAndDilution`: both low — bath was lost and water came in. `concentrated`: both high — over-strength replenisher fed too fast.
 * `apart`: two that should agree, as controller and thermometer, differ by more than the plan allows.
 * `readTheOther`: one of a pair is out, and the other was not read about the same time.
 */
export type PairCode =
  | 'evaporation' | 'lossOfBath' | 'waterIn' | 'wrongMix' | 'weakMix' | 'overfed' | 'lossAndDilution' | 'concentrated' | 'apart' | 'readTheOther'

export interface PairFinding {
  code: PairCode
  /** The check that names the other in the plan, and that other. */
  check: CheckId
  other: CheckId
  mark: Mark
  otherMark?: Mark
  /** First minus second, where they are compared. */
  difference?: number
  within?: number
}

/** Two readings further apart in time than this do not speak of the same bath. Common practice, no source. */
export const togetherMinutes = 60

/** Every pair of the plan about which there is something to say. */
export const pairFindings = (state: LabState, plan: LabPlan, now: number): PairFinding[] =>
  plan.checks.flatMap((check) => {
    if (check.kind !== 'reading' || !check.pairedWith) return []
    const other = plan.checks.find(({ id }) => id === check.pairedWith)
    if (other?.kind !== 'reading' || isToldByOther(check, other)) return []
    const finding = pairFinding(state, check, other, now)
    return finding ? [finding] : []
  })

/** Two may each name the other, and one finding is enough: the level tells it, else the one whose id comes first. */
const isToldByOther = (check: ReadingCheck, other: ReadingCheck): boolean =>
  other.pairedWith === check.id && (other.quantity === 'level' || (check.quantity !== 'level' && other.id < check.id))

export const pairFinding = (state: LabState, check: ReadingCheck, other: ReadingCheck, now: number): PairFinding | undefined => {
  const mark = lastValue(state, check, now)
  const otherMark = lastValue(state, other, now)
  const newest = mark && otherMark ? (mark.time >= otherMark.time ? mark : otherMark) : (mark ?? otherMark)
  if (!newest) return undefined
  const together = mark && otherMark && Math.abs(mark.time - otherMark.time) <= togetherMinutes * 60_000
  if (!together) {
    const [out, missing, outMark, oldMark] = newest === mark ? [check, other, mark, otherMark] : [other, check, otherMark!, mark]
    if (judge(out.limits, newest.value!).verdict === 'IN') return undefined
    return { code: 'readTheOther', check: out.id, other: missing.id, mark: outMark, ...(oldMark ? { otherMark: oldMark } : {}) }
  }
  const found = { check: check.id, other: other.id, mark, otherMark }
  const kinds = `${check.quantity} ${other.quantity}`
  if (kinds === 'level specificGravity') {
    const code = levelAndGravity(sideOf(check, mark), sideOf(other, otherMark))
    return code && { ...found, code }
  }
  if (kinds === 'specificGravity level') {
    const code = levelAndGravity(sideOf(other, otherMark), sideOf(check, mark))
    return code && { ...found, code }
  }
  if (check.pairedWithin === undefined) return undefined
  const difference = mark.value! - otherMark.value!
  return above(Math.abs(difference), check.pairedWithin) ? { ...found, code: 'apart', difference, within: check.pairedWithin } : undefined
}

const lastValue = (state: LabState, check: ReadingCheck, now: number): Mark | undefined =>
  state.checks[check.id]?.recent.findLast(({ time, value }) => time <= now && value !== undefined)

type Side = 'low' | 'in' | 'high'
const sideOf = (check: ReadingCheck, mark: Mark): Side => {
  const { verdict, side } = judge(check.limits, mark.value!)
  return verdict === 'IN' || side === 'onAim' ? 'in' : side
}

/** Common practice of the tank room; no source. */
const table: Readonly<Record<`${Side} ${Side}`, PairCode | undefined>> = {
  'low high': 'evaporation',
  'low in': 'lossOfBath',
  'low low': 'lossAndDilution',
  'in high': 'wrongMix',
  'in in': undefined,
  'in low': 'weakMix',
  'high low': 'waterIn',
  'high in': 'overfed',
  'high high': 'concentrated',
}
const levelAndGravity = (level: Side, gravity: Side): PairCode | undefined => table[`${level} ${gravity}`]
