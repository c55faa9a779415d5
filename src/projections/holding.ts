import type { Check } from '../plan/check.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { above, below } from '../science/decimal.ts'
import { openExceptions, type Exception } from './exceptions.ts'
import { standingHolds } from './holds.ts'
import type { LabState } from './lab-state.ts'

/** Whether being out can hold the machine: at once, beyond a second pair of limits, or for a strip when a second strip agrees. */
export const canHold = (check: Check): boolean =>
  check.immediateHold || check.kind === 'strip' || (check.kind === 'reading' && (check.holdBelow !== undefined || check.holdAbove !== undefined))

export type HoldReason = 'immediate' | 'beyondHoldLimit' | 'stripConfirmed'

/** Why an open exception calls for a hold; undefined while it is corrected with the machine running, or waits for its repeat. */
export const holdReason = (check: Check, exception: Exception): HoldReason | undefined => {
  if (exception.state !== 'open') return undefined
  if (check.immediateHold) return 'immediate'
  if (check.kind === 'strip') return 'stripConfirmed'
  const value = exception.marks.at(-1)?.value
  if (check.kind !== 'reading' || value === undefined) return undefined
  const isBeyond = (check.holdBelow !== undefined && below(value, check.holdBelow)) || (check.holdAbove !== undefined && above(value, check.holdAbove))
  return isBeyond ? 'beyondHoldLimit' : undefined
}

export interface HoldAsked {
  exception: Exception
  reason: HoldReason
}

/** Exceptions that call for a hold on a machine that nobody has held. A person decides; the product asks. */
export const holdsAsked = (state: LabState, plan: LabPlan): HoldAsked[] =>
  openExceptions(state.exceptions).flatMap((exception) => {
    if (standingHolds(state.holds, exception.machine).length) return []
    const check = plan.checks.find(({ id }) => id === exception.check)
    const reason = check && holdReason(check, exception)
    return reason ? [{ exception, reason }] : []
  })
