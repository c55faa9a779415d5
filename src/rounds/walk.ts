import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { dueAtMachine, type Due } from '../projections/due.ts'
import type { LabState } from '../projections/lab.ts'

/** Checks that fall due this soon are taken along: otherwise a round comes apart into single errands. Common practice, no source. */
export const takenAlongMinutes = 15
/** Of a check's own interval at most this share: one read every quarter of an hour is not read twice in a round. */
const takenAlongShare = 0.25

/** What a round along one machine would hold now, in the order of the film's path. */
export interface Walk {
  machine: Machine
  checks: Due[]
  /** The earliest instant at which one of them is due: it names the round. */
  dueAt: number
}

export const walkAt = (state: LabState, plan: LabPlan, machine: Machine, now: number): Walk | undefined => {
  const near = (due: Due): boolean => {
    const interval = due.check.schedule.kind === 'interval' ? due.check.schedule.minutes * takenAlongShare : takenAlongMinutes
    return due.dueAt <= now + Math.min(takenAlongMinutes, interval) * 60_000
  }
  const due = dueAtMachine(state, plan, machine, now)
  if (!due.some(({ status }) => status !== 'ahead')) return undefined
  const checks = due.filter(near)
  return { machine, checks, dueAt: Math.min(...checks.map(({ dueAt }) => dueAt)) }
}

/** One walk for each machine that has something due, the earliest first. */
export const walks = (state: LabState, plan: LabPlan, now: number): Walk[] =>
  plan.machines
    .map((machine) => walkAt(state, plan, machine, now))
    .filter((walk) => walk !== undefined)
    .sort((a, b) => a.dueAt - b.dueAt)

/** When the next check anywhere falls due, where nothing is due now. */
export const nextDueAt = (state: LabState, plan: LabPlan, now: number): number | undefined => {
  const ahead = plan.machines.flatMap((machine) => dueAtMachine(state, plan, machine, now)).map(({ dueAt }) => dueAt)
  return ahead.length ? Math.min(...ahead) : undefined
}
