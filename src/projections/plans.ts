import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { Line } from './line.ts'

export interface PlanInForce {
  id: EntryId
  from: number
  plan: LabPlan
}

/** Revisions of the plan, the earliest in force first. */
export interface Plans {
  revisions: PlanInForce[]
}

export const stepPlans = (state: Plans, line: Line): void => {
  if (line.kind !== 'plan') return
  state.revisions.push({ id: line.id, from: line.data.effectiveFrom, plan: line.data.plan })
  state.revisions.sort((a, b) => a.from - b.from)
}

/** The plan at an instant; before the first revision, the first one. */
export const planAt = (state: Plans, time: number): PlanInForce | undefined => {
  let found = state.revisions[0]
  for (const revision of state.revisions) if (revision.from <= time) found = revision
  return found
}

/** The plan by which a line is judged: the one it names, else the one in force. */
export const planOfLine = (state: Plans, line: Line): PlanInForce | undefined => {
  const named = 'plan' in line.data && typeof line.data.plan === 'string' ? line.data.plan : undefined
  return state.revisions.find(({ id }) => id === named) ?? planAt(state, line.time)
}
