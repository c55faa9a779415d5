import type { Check } from '../plan/check.ts'
import { checksOfMachine } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { shiftAt, type ShiftSpan } from '../plan/shift-time.ts'
import type { CheckNow } from './checks.ts'
import type { LabState } from './lab-state.ts'
import { spanAt, stateSince } from './machines.ts'
import { checkSince } from './plans.ts'

export interface Due {
  check: Check
  machine: Machine
  /** Milliseconds since 1970. */
  dueAt: number
  lateAt: number
  status: 'ahead' | 'due' | 'late'
  /** Whole intervals, or shifts, that went by without it being done. */
  missed: number
}

/** What is due or falls due next at one machine, in the order of the film's path. A stopped machine asks for nothing but what says so. */
export const dueAtMachine = (state: LabState, plan: LabPlan, machine: Machine, now: number): Due[] => dueWith(shiftsBack(plan, now), state, plan, machine, now)

export const dueChecks = (state: LabState, plan: LabPlan, now: number): Due[] => {
  const shifts = shiftsBack(plan, now)
  return plan.machines.flatMap((machine) => dueWith(shifts, state, plan, machine, now))
}

const dueWith = (shifts: Shifts, state: LabState, plan: LabPlan, machine: Machine, now: number): Due[] => {
  const at = spanAt(state.machines[machine.id], now).state
  return checksOfMachine(plan, machine)
    .filter((check) => check.states.includes(at))
    .map((check) => dueOf(shifts, state, machine, check, now))
    .filter((due) => due !== undefined)
}

/** The shift of an instant (0) and those before it (1, 2 …), each worked out once: the calendar is the slow part. */
type Shifts = (back: number) => ShiftSpan
const shiftsBack = (plan: LabPlan, now: number): Shifts => {
  const known: ShiftSpan[] = []
  return (back) => {
    for (let index = known.length; index <= back; index++) known.push(shiftAt(plan, index === 0 ? now : known[index - 1]!.from - 1))
    return known[back]!
  }
}

/** As many shifts back as are looked for gaps: beyond, the number says nothing more. */
const mostShiftsBack = 9

/**
 * When a check was last answered for: done, or honestly left out. A gap that was explained stands for the instant at which the check
 * was due, so that a reason given at the end of the shift does not put off what is due now.
 */
export const answeredAt = (done: CheckNow | undefined): number => {
  const skip = done?.lastSkip
  return Math.max(done?.recent.at(-1)?.time ?? Number.NEGATIVE_INFINITY, skip ? Math.min(skip.due, skip.time) : Number.NEGATIVE_INFINITY)
}

const dueOf = (shifts: Shifts, state: LabState, machine: Machine, check: Check, now: number): Due | undefined => {
  const lastAt = answeredAt(state.checks[check.id])
  const inState = stateSince(state.machines[machine.id], check.states, now)
  const timed = (dueAt: number, graceMinutes: number, missed: number): Due => {
    const lateAt = dueAt + graceMinutes * 60_000
    return { check, machine, dueAt, lateAt, missed, status: now < dueAt ? 'ahead' : now <= lateAt ? 'due' : 'late' }
  }
  const since = Math.max(inState, checkSince(state.plans, check.id, now))
  const from = since === Number.NEGATIVE_INFINITY ? now : since
  const isDone = lastAt > Number.NEGATIVE_INFINITY && lastAt >= since
  const { schedule } = check
  switch (schedule.kind) {
    case 'interval': {
      const interval = schedule.minutes * 60_000
      const first = isDone ? lastAt + interval : from
      const missed = Math.max(0, Math.floor((now - first) / interval))
      return timed(first + missed * interval, schedule.graceMinutes, missed)
    }
    case 'shift': {
      const shift = shifts(0)
      if (lastAt >= shift.from && lastAt < shift.to) return undefined
      let missed = 0
      while (missed < mostShiftsBack && lastAt < shifts(missed + 1).from && dueInShift(shifts(missed + 1), since, schedule.afterMinutes)) missed++
      return timed(Math.max(shift.from, since) + schedule.afterMinutes * 60_000, schedule.graceMinutes, missed)
    }
    case 'state':
      return isDone ? undefined : timed(from, schedule.graceMinutes, 0)
  }
}

const dueInShift = (shift: ShiftSpan, since: number, afterMinutes: number): boolean => Math.max(shift.from, since) + afterMinutes * 60_000 < shift.to
