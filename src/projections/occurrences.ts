import type { Schedule } from '../plan/schedule.ts'
import type { ShiftSpan } from '../plan/shift-time.ts'
import type { PersonId } from '../plan/ids.ts'
import type { EntryId } from '../record/ids.ts'
import { canBeSkipped, isGapOf, occurrenceNamed } from './due.ts'
import type { Stretch } from './stretches.ts'

/**
 * `done`, `late`: done within or after the grace. `skipped`: left out with a reason while it was due. `machineStopped`: the machine stood still
 * before it was late. `missed`, `missedWithReason`: the next fell due, or the shift or the state ended. `pending`, `overdue`: still open now.
 */
export type OccurrenceStatus = 'done' | 'late' | 'skipped' | 'machineStopped' | 'missed' | 'missedWithReason' | 'pending' | 'overdue'

/** One time that a check was due. */
export interface Occurrence {
  dueAt: number
  lateAt: number
  status: OccurrenceStatus
  answeredAt?: number
  /** The entry by which it was done or explained. */
  entry?: EntryId
  person?: PersonId | null
  reason?: string
}

/** What was said of a check: done, or left out. */
export interface Answer {
  id: EntryId
  time: number
  person: PersonId | null
  /** A repeat or a re-check answers for no round of its own. */
  isAgain?: boolean
  /** Of one that was left out: when it was due, and why. */
  skip?: { due: number; reason: string }
}

interface Asked<S extends Schedule['kind']> {
  schedule: Extract<Schedule, { kind: S }>
  stretches: readonly Stretch[]
  /** In order of time; those from before the first stretch only as `lastBefore`. */
  answers: readonly Answer[]
  now: number
}

const minute = 60_000

const answered = (dueAt: number, lateAt: number, by: Answer): Occurrence => ({
  dueAt,
  lateAt,
  answeredAt: by.time,
  entry: by.id,
  person: by.person,
  ...(by.skip
    ? { status: by.skip.reason === 'machineStopped' ? 'machineStopped' : 'skipped', reason: by.skip.reason }
    : { status: by.time > lateAt ? 'late' : 'done' }),
})

const explained = (occurrence: Occurrence, by: Answer): void => {
  occurrence.status = by.skip!.reason === 'machineStopped' ? 'machineStopped' : 'missedWithReason'
  occurrence.reason = by.skip!.reason
  occurrence.entry = by.id
  occurrence.person = by.person
  occurrence.answeredAt = by.time
}

/**
 * A check at intervals: due when the machine came into the state, then an interval after each time it was done. Reading it early, as rounds do,
 * answers for the time to come if that was less than half an interval away. A gap that was explained moves nothing: the next is due when it was.
 */
export const intervalOccurrences = ({ schedule, stretches, answers, now, lastBefore }: Asked<'interval'> & { lastBefore: number }): Occurrence[] => {
  const interval = schedule.minutes * minute
  const lateAt = (dueAt: number): number => dueAt + schedule.graceMinutes * minute
  const occurrences: Occurrence[] = []
  const explainGap = (answer: Answer, due: number): void => {
    const gap = occurrences.findLast((it) => it.status === 'missed' && occurrenceNamed({ due }, it.dueAt, interval) === 0)
    if (gap) explained(gap, answer)
  }
  let last = lastBefore
  for (const { from, to } of stretches) {
    if (from > now) break
    let first = last >= from && last > Number.NEGATIVE_INFINITY ? last + interval : from
    if (first === Number.NEGATIVE_INFINITY) continue
    let next = first
    const miss = (): void => {
      occurrences.push({ dueAt: next, lateAt: lateAt(next), status: 'missed' })
      next += interval
    }
    const missUpTo = (time: number): void => {
      while (next + interval <= time) miss()
    }
    for (const answer of answers) {
      const { skip, time } = answer
      if (time < from || time >= to || time > now || time < last) continue
      missUpTo(time)
      if (skip) {
        const named = first + occurrenceNamed(skip, first, interval) * interval
        if (named < next) explainGap(answer, skip.due)
        else if (canBeSkipped(named, time, interval)) {
          while (next < named) miss()
          occurrences.push(answered(next, lateAt(next), answer))
          next += interval
        }
        continue
      }
      if (time >= next || (!answer.isAgain && next - time <= interval / 2)) occurrences.push(answered(next, lateAt(next), answer))
      last = time
      first = next = time + interval
    }
    const end = Math.min(to, now)
    missUpTo(end)
    if (to > now && next <= now) occurrences.push({ dueAt: next, lateAt: lateAt(next), status: now <= lateAt(next) ? 'pending' : 'overdue' })
    else if (to <= now && next < end) occurrences.push({ dueAt: next, lateAt: lateAt(next), status: end <= lateAt(next) ? 'machineStopped' : 'missed' })
  }
  // Reasons given when the machine had stopped.
  for (const answer of answers)
    if (answer.skip && answer.time <= now && !occurrences.some(({ entry }) => entry === answer.id)) explainGap(answer, answer.skip.due)
  return occurrences
}

/** A check of once a shift. Whatever was read in the shift answers for it. */
export const shiftOccurrences = ({ schedule, stretches, answers, now, shifts }: Asked<'shift'> & { shifts: readonly ShiftSpan[] }): Occurrence[] =>
  shifts.flatMap((shift): Occurrence[] => {
    if (shift.from > now) return []
    const windows = stretches.flatMap(({ from, to }) => {
      const dueAt = Math.max(shift.from, from) + schedule.afterMinutes * minute
      const end = Math.min(to, shift.to)
      return from < shift.to && to > shift.from && dueAt < end && dueAt <= now ? [{ dueAt, end, stopsBefore: to < shift.to }] : []
    })
    const done = answers.find(({ time, skip }) => !skip && time >= shift.from && time < shift.to && time <= now)
    const skipped = answers.find(({ time, skip }) => skip && time <= now && isGapOf({ due: skip.due, time }, shift))
    const window = windows.findLast(({ dueAt }) => !done || dueAt <= done.time) ?? windows[0]
    if (!window) {
      // Read before it was due, in a round that took it along.
      const early = stretches.find(({ from, to }) => done && from <= done.time && done.time < to)
      const dueAt = early && Math.max(shift.from, early.from) + schedule.afterMinutes * minute
      return done && dueAt !== undefined && dueAt < shift.to ? [answered(dueAt, dueAt + schedule.graceMinutes * minute, done)] : []
    }
    const lateAt = window.dueAt + schedule.graceMinutes * minute
    if (done) return [answered(window.dueAt, lateAt, done)]
    const open: Occurrence = { dueAt: window.dueAt, lateAt, status: 'missed' }
    if (skipped && skipped.time < shift.to) return [answered(window.dueAt, lateAt, skipped)]
    if (now < window.end) return [{ ...open, status: now <= lateAt ? 'pending' : 'overdue' }]
    if (window.stopsBefore && window.end <= lateAt) return [{ ...open, status: 'machineStopped' }]
    if (skipped) explained(open, skipped)
    return [open]
  })

/** A check of once a state: before the state ends, or it is missed. */
export const stateOccurrences = ({ schedule, stretches, answers, now }: Asked<'state'>): Occurrence[] =>
  stretches.flatMap(({ from, to }): Occurrence[] => {
    if (from > now || from === Number.NEGATIVE_INFINITY) return []
    const lateAt = from + schedule.graceMinutes * minute
    const done = answers.find(({ time, skip }) => !skip && time >= from && time < to && time <= now)
    if (done) return [answered(from, lateAt, done)]
    const skipped = answers.find(({ time, skip }) => skip && time <= now && isGapOf({ due: skip.due, time }, { from, to }))
    if (skipped && skipped.time < to) return [answered(from, lateAt, skipped)]
    const open: Occurrence = { dueAt: from, lateAt, status: now < to ? (now <= lateAt ? 'pending' : 'overdue') : 'missed' }
    if (skipped && open.status === 'missed') explained(open, skipped)
    return [open]
  })
