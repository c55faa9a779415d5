import { checksOfMachine } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { dueAtMachine, type Due } from '../projections/due.ts'
import { mixingUntil, openExceptions, phaseAt } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'

/** Checks that fall due this soon are taken along: otherwise a round comes apart into single errands. Common practice, no source. */
export const takenAlongMinutes = 15
/** Of a check's own interval at most this share: one read every quarter of an hour is not read twice in a round. */
const takenAlongShare = 0.25

/** Why a check is in the round: it is due, or what was seen must be confirmed, or a dose has mixed and the bath must be read again. */
export interface WalkCheck extends Due {
  as: 'turn' | 'repeat' | 'recheck'
}

/** What a round along one machine would hold now, in the order of the film's path. */
export interface Walk {
  machine: Machine
  checks: WalkCheck[]
  /** The earliest instant at which one of them is due: it names the round. */
  dueAt: number
}

export const walkAt = (state: LabState, plan: LabPlan, machine: Machine, now: number): Walk | undefined => {
  const near = (due: Due): boolean => {
    const interval = due.check.schedule.kind === 'interval' ? due.check.schedule.minutes * takenAlongShare : takenAlongMinutes
    return due.dueAt <= now + Math.min(takenAlongMinutes, interval) * 60_000
  }
  const due = dueAtMachine(state, plan, machine, now)
  const asked = askedAgain(state, plan, machine, now)
  if (!asked.length && !due.some(({ status }) => status !== 'ahead')) return undefined
  const inTurn = due.filter((it) => near(it) && !asked.some(({ check }) => check.id === it.check.id)).map((it): WalkCheck => ({ ...it, as: 'turn' }))
  const place = new Map(machine.stations.map(({ id }, index) => [id, index]))
  const order = new Map(checksOfMachine(plan, machine).map(({ id }, index) => [id, index]))
  const checks = [...inTurn, ...asked].sort(
    (a, b) => place.get(a.check.station)! - place.get(b.check.station)! || order.get(a.check.id)! - order.get(b.check.id)!,
  )
  return { machine, checks, dueAt: Math.min(...checks.map(({ dueAt }) => dueAt)) }
}

/** Checks whose exception waits for its repeat or its re-check, though they may not be due. While a dose mixes there is nothing to read. */
const askedAgain = (state: LabState, plan: LabPlan, machine: Machine, now: number): WalkCheck[] =>
  openExceptions(state.exceptions).flatMap((exception): WalkCheck[] => {
    const phase = phaseAt(exception, now)
    if (exception.machine !== machine.id || (phase !== 'toConfirm' && phase !== 'toRecheck')) return []
    const check = plan.checks.find(({ id }) => id === exception.check)
    if (!check) return []
    const dueAt = phase === 'toConfirm' ? exception.marks.at(-1)!.time : mixingUntil(exception)
    const lateAt = dueAt + check.schedule.graceMinutes * 60_000
    return [{ check, machine, dueAt, lateAt, missed: 0, status: now <= lateAt ? 'due' : 'late', as: phase === 'toConfirm' ? 'repeat' : 'recheck' }]
  })

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
