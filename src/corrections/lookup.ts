import type { Check, ReadingCheck } from '../plan/check.ts'
import type { StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judge, type Judged } from '../plan/limits.ts'
import type { Quantity } from '../plan/check.ts'
import { placeOf } from '../plan/find.ts'
import { shiftAt } from '../plan/shift-time.ts'
import type { Mark } from '../projections/checks.ts'
import type { LabState } from '../projections/lab.ts'
import { spanAt } from '../projections/machines.ts'

/** Checks are found by what they read and where, so that no laboratory’s own ids are in the code. */
export const readingsAt = (plan: LabPlan, station: StationId, quantity: Quantity, of?: string): ReadingCheck[] =>
  plan.checks.filter(
    (it): it is ReadingCheck => it.kind === 'reading' && it.station === station && it.quantity === quantity && (of === undefined || it.of === of),
  )

/** The last time a check was done at or before an instant. */
export const lastMark = (lab: LabState, check: Check, now: number): Mark | undefined =>
  lab.checks[check.id]?.recent.findLast(({ time }) => time <= now)

export interface Found {
  check: ReadingCheck
  mark: Mark
  value: number
  judged: Judged
}

/** The last value of a check, judged by the limits in force now: a plan may have been tightened since. */
export const foundBy = (lab: LabState, check: ReadingCheck, now: number): Found | undefined => {
  const mark = lastMark(lab, check, now)
  return mark?.value === undefined ? undefined : { check, mark, value: mark.value, judged: judge(check.limits, mark.value) }
}

const minute = 60_000

/**
 * Whether a mark still speaks for its check: it is not older than the check's own interval. For a check of once a shift: done in this shift,
 * or in the one before while it is not yet due in this one. For one of once a state: done since the machine came into its state.
 */
export const isCurrent = (lab: LabState, plan: LabPlan, check: Check, mark: Mark, now: number, extraMinutes = 0): boolean => {
  const { schedule } = check
  switch (schedule.kind) {
    case 'interval':
      return now - mark.time <= (schedule.minutes + extraMinutes) * minute
    case 'shift': {
      const shift = shiftAt(plan, now)
      if (mark.time >= shift.from) return true
      const notYetDue = now <= shift.from + (schedule.afterMinutes + extraMinutes) * minute
      return notYetDue && mark.time >= shiftAt(plan, shift.from - 1).from
    }
    case 'state': {
      const { machine } = placeOf(plan, check.station)
      return mark.time >= spanAt(lab.machines[machine.id], now).from
    }
  }
}

/** The same with the check's grace: overdue is what is late, not what has just fallen due. */
export const isNotOverdue = (lab: LabState, plan: LabPlan, check: Check, mark: Mark, now: number): boolean =>
  isCurrent(lab, plan, check, mark, now, check.schedule.graceMinutes)
