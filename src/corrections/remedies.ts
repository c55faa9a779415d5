import type { LabPlan } from '../plan/lab-plan.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'
import { above, below } from '../science/decimal.ts'
import type { Remedy } from './remedy.ts'
import type { HoldRule, Row } from './row.ts'
import { rowsOf } from './row-of.ts'
import { say } from './say.ts'
import { situationOf, type Known, type Situation } from './situation.ts'

/** What the trade says of an exception: the fault by its code, where to look first, the remedies in their order, when to read again. */
export interface Answered {
  fault: string
  lookFirst: readonly string[]
  remedies: readonly Remedy[]
  recheck: Row['recheck']
  /** Production is to be kept off the machine for this, as it stands. */
  holdNow: boolean
  source: string
}

/** Every fault that fits the exception, the likeliest first; a look that was not right may fit several, and the person chooses. */
export const answers = (lab: LabState, plan: LabPlan, id: EntryId, now: number, known: Known = {}): Answered[] => {
  const situation = situationOf(lab, plan, id, now, known)
  if (!situation || situation.exception.state === 'closed') return []
  return rowsOf(situation).map((row) => answered(situation, row))
}

/**
 * The remedies for an open exception, in the order in which they are to be tried.
 * @example remedies(lab.state, plan, exception.id, now).find((it) => it.dose && !it.refused)
 */
export const remedies = (lab: LabState, plan: LabPlan, id: EntryId, now: number, known: Known = {}): readonly Remedy[] =>
  answers(lab, plan, id, now, known)[0]?.remedies ?? []

const answered = (situation: Situation, row: Row): Answered => ({
  fault: row.code,
  lookFirst: row.lookFirst,
  remedies: row.then.flatMap((then) => (typeof then === 'string' ? [advice(situation, row, then)] : then(situation, row))),
  recheck: row.recheck,
  holdNow: holdsNow(situation, row.hold),
  source: row.source,
})

const advice = ({ exception, station }: Situation, { source }: Row, code: string): Remedy => ({
  id: `look:${code}`, code: 'look', exception: exception.id, station: station.id, says: say(code), how: [], source,
})

/** The plan's own bounds of the check decide; where it has none, the row's. */
const holdsNow = ({ value, check, exception }: Situation, rule: HoldRule): boolean => {
  if (exception.state !== 'open') return check.immediateHold
  if (check.immediateHold) return true
  if (check.kind === 'reading' && value !== undefined && (check.holdAbove !== undefined || check.holdBelow !== undefined))
    return (check.holdAbove !== undefined && above(value, check.holdAbove)) || (check.holdBelow !== undefined && below(value, check.holdBelow))
  switch (rule.when) {
    case 'none':
      return false
    case 'always':
      return true
    case 'confirmed':
      return exception.marks.filter(({ verdict }) => verdict === 'ACT').length > 1
    case 'beyond': {
      if (value === undefined || check.kind !== 'reading') return false
      const isOff = rule.offAimBy !== undefined && above(Math.abs(value - check.limits.aim), rule.offAimBy)
      return isOff || (rule.above !== undefined && above(value, rule.above)) || (rule.below !== undefined && below(value, rule.below))
    }
  }
}
