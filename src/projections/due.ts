import type { Check } from '../plan/check.ts'
import { checksOfMachine } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { shiftAt } from '../plan/shift-time.ts'
import type { CheckNow } from './checks.ts'
import type { LabState } from './lab.ts'
import { spanAt, type RunSpan } from './machines.ts'

export interface Due {
  check: Check
  machine: Machine
  /** Milliseconds since 1970. */
  dueAt: number
  lateAt: number
  status: 'ahead' | 'due' | 'late'
  /** Whole intervals that went by without it being done. */
  missed: number
}

/** What is due or falls due next at one machine, in the order of the film's path. A stopped machine asks for nothing but what says so. */
export const dueAtMachine = (state: LabState, plan: LabPlan, machine: Machine, now: number): Due[] => {
  const span = spanAt(state.machines[machine.id], now)
  return checksOfMachine(plan, machine)
    .filter((check) => check.states.includes(span.state))
    .map((check) => dueOf(plan, machine, check, state.checks[check.id], stateSince(state, machine, check, now), now))
    .filter((due) => due !== undefined)
}

export const dueChecks = (state: LabState, plan: LabPlan, now: number): Due[] =>
  plan.machines.flatMap((machine) => dueAtMachine(state, plan, machine, now))

/** Since when the machine has been in states in which the check applies: a change of speed does not start it anew. */
const stateSince = (state: LabState, machine: Machine, check: Check, now: number): number => {
  const spans = (state.machines[machine.id]?.spans ?? []).filter(({ from }) => from <= now)
  const applies = (span: RunSpan): boolean => check.states.includes(span.state)
  const lastOther = spans.findLastIndex((span) => !applies(span))
  return spans[lastOther + 1]?.from ?? now
}

const dueOf = (plan: LabPlan, machine: Machine, check: Check, done: CheckNow | undefined, since: number, now: number): Due | undefined => {
  const lastAt = Math.max(done?.recent.at(-1)?.time ?? Number.NEGATIVE_INFINITY, done?.lastSkip?.time ?? Number.NEGATIVE_INFINITY)
  const timed = (dueAt: number, graceMinutes: number, missed: number): Due => {
    const lateAt = dueAt + graceMinutes * 60_000
    return { check, machine, dueAt, lateAt, missed, status: now < dueAt ? 'ahead' : now < lateAt ? 'due' : 'late' }
  }
  const { schedule } = check
  switch (schedule.kind) {
    case 'interval': {
      const interval = schedule.minutes * 60_000
      // Done in this state before: one interval later. Not yet: at once.
      const first = lastAt >= since ? lastAt + interval : since
      const missed = Math.max(0, Math.floor((now - first) / interval))
      return timed(first + missed * interval, schedule.graceMinutes, missed)
    }
    case 'shift': {
      const shift = shiftAt(plan, now)
      const start = Math.max(shift.from, since)
      return lastAt >= shift.from && lastAt < shift.to ? undefined : timed(start + schedule.afterMinutes * 60_000, schedule.graceMinutes, 0)
    }
    case 'state':
      return lastAt >= since ? undefined : timed(since, schedule.graceMinutes, 0)
  }
}
