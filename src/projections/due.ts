import type { Check } from '../plan/check.ts'
import { checksOfMachine } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { shiftAt, type ShiftSpan } from '../plan/shift-time.ts'
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

/** A gap is named by the instant at which the check was due; that instant may move a little when an entry arrives late. */
const slackMilliseconds = 60_000

/** Which occurrence of a check at intervals a gap names, counted from the first that is due; below 0 it is an older one. */
export const occurrenceNamed = (skip: { due: number }, first: number, interval: number): number => Math.floor((skip.due - first + slackMilliseconds) / interval)

/** A gap may be named ahead of time, as a round does, but not one that is still far off. */
export const canBeSkipped = (dueAt: number, at: number, interval: number): boolean => dueAt <= at + interval / 2

/** Whether a gap that was explained is of a shift or of a state, and not of the one before. */
export const isGapOf = (skip: { due: number; time: number }, { from, to }: { from: number; to: number }): boolean =>
  skip.due >= from - slackMilliseconds && skip.due < to - slackMilliseconds && skip.time >= from

const dueOf = (shifts: Shifts, state: LabState, machine: Machine, check: Check, now: number): Due | undefined => {
  const done = state.checks[check.id]
  const lastAt = done?.recent.at(-1)?.time ?? Number.NEGATIVE_INFINITY
  const skip = done?.lastSkip
  const inState = stateSince(state.machines[machine.id], check.states, now)
  const timed = (dueAt: number, graceMinutes: number, missed: number): Due => {
    const lateAt = dueAt + graceMinutes * 60_000
    return { check, machine, dueAt, lateAt, missed, status: now < dueAt ? 'ahead' : now <= lateAt ? 'due' : 'late' }
  }
  // Nobody ever said what the machine does: what is asked for of a stopped machine is due from now on.
  const since = Math.max(inState, checkSince(state.plans, check.id, now))
  const from = since === Number.NEGATIVE_INFINITY ? now : since
  const isDone = lastAt > Number.NEGATIVE_INFINITY && lastAt >= since
  const { schedule } = check
  switch (schedule.kind) {
    case 'interval': {
      const interval = schedule.minutes * 60_000
      const afterDone = isDone ? lastAt + interval : from
      const named = skip && skip.time >= Math.max(since, lastAt) ? occurrenceNamed(skip, afterDone, interval) : -1
      const isSkipped = skip && named >= 0 && canBeSkipped(afterDone + named * interval, skip.time, interval)
      const first = isSkipped ? afterDone + (named + 1) * interval : afterDone
      const missed = Math.max(0, Math.floor((now - first) / interval))
      return timed(first + missed * interval, schedule.graceMinutes, missed)
    }
    case 'shift': {
      const shift = shifts(0)
      if ((lastAt >= shift.from && lastAt < shift.to) || (skip && isGapOf(skip, shift))) return undefined
      let missed = 0
      while (missed < mostShiftsBack && lastAt < shifts(missed + 1).from && dueInShift(shifts(missed + 1), since, schedule.afterMinutes)) missed++
      return timed(Math.max(shift.from, since) + schedule.afterMinutes * 60_000, schedule.graceMinutes, missed)
    }
    case 'state':
      return isDone || (skip && isGapOf(skip, { from: since, to: Number.POSITIVE_INFINITY })) ? undefined : timed(from, schedule.graceMinutes, 0)
  }
}

const dueInShift = (shift: ShiftSpan, since: number, afterMinutes: number): boolean => Math.max(shift.from, since) + afterMinutes * 60_000 < shift.to
