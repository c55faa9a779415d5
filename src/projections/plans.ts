import type { CheckId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { Line, LineOf } from './line.ts'

export interface PlanInForce {
  id: EntryId
  from: number
  plan: LabPlan
}

/** Revisions of the plan, the earliest in force first. */
export interface Plans {
  revisions: PlanInForce[]
}

/**
 * The revisions that a log holds. They are known throughout the log, not only after the line that brought them: a reading made on a phone
 * whose clock is slow may stand before the plan that it names.
 */
export const plansOf = (lines: readonly LineOf<'plan'>[]): PlanInForce[] =>
  lines.map((line) => ({ id: line.id, from: line.data.effectiveFrom, plan: line.data.plan })).sort((a, b) => a.from - b.from)

/** The plan at an instant; before the first revision, the first one. */
export const planAt = (state: Plans, time: number): PlanInForce | undefined => state.revisions.findLast(({ from }) => from <= time) ?? state.revisions[0]

/** The plan by which a line is judged: the one it names, else the one in force. */
export const planOfLine = (state: Plans, line: Line): PlanInForce | undefined => {
  const named = 'plan' in line.data && typeof line.data.plan === 'string' ? line.data.plan : undefined
  return (named && state.revisions.findLast(({ id }) => id === named)) || planAt(state, line.time)
}

/** Since when a check has stood in the plan without a break. */
export const checkSince = (state: Plans, check: CheckId, now: number): number => {
  let since: number | undefined
  for (const revision of state.revisions) {
    if (since !== undefined && revision.from > now) break
    if (!revision.plan.checks.some(({ id }) => id === check)) since = undefined
    else since ??= revision.from
  }
  return since ?? Number.NEGATIVE_INFINITY
}
