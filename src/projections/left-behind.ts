import type { CheckId, MachineId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { WrittenPlan } from '../plan/written-plan.ts'
import { openExceptions, type Exception } from './exceptions.ts'
import { standingHolds, type HoldNow } from './holds.ts'
import type { LabState } from './lab-state.ts'

/** Whether the plan still has the place and the check of an exception: only then can it be read again and corrected. */
export const isInPlan = (plan: WrittenPlan | LabPlan, { check, station, machine }: { check: CheckId; station: StationId; machine: MachineId }): boolean =>
  plan.checks.some(({ id }) => id === check) && plan.machines.some((it) => it.id === machine) && plan.machines.some(({ stations }) => stations.some(({ id }) => id === station))

/** Exceptions that the plan can still answer, the oldest first. */
export const answerableExceptions = (state: LabState, plan: LabPlan): Exception[] => openExceptions(state.exceptions).filter((it) => isInPlan(plan, it))

export interface LeftBehind {
  exceptions: Exception[]
  holds: HoldNow[]
}

/** What is still open on something that a revision took out of the plan: nothing falls due there any more, but somebody must close or release it. */
export const leftBehind = (state: LabState, plan: LabPlan): LeftBehind => ({
  exceptions: openExceptions(state.exceptions).filter((it) => !isInPlan(plan, it)),
  holds: standingHolds(state.holds).filter(({ machine }) => !plan.machines.some(({ id }) => id === machine)),
})
