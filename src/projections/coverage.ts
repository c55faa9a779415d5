import type { Check } from '../plan/check.ts'
import { checksOfMachine } from '../plan/find.ts'
import type { CheckId, MachineId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { shiftAt, type ShiftSpan } from '../plan/shift-time.ts'
import { markOf, type CheckNow } from './checks.ts'
import type { Lab } from './lab.ts'
import type { LabState } from './lab-state.ts'
import type { Line } from './line.ts'
import type { RunSpan } from './machines.ts'
import { intervalOccurrences, shiftOccurrences, stateOccurrences, type Answer, type Occurrence, type OccurrenceStatus } from './occurrences.ts'
import { checkSince } from './plans.ts'
import { stretchesOf, type Stretch } from './stretches.ts'

export interface Span {
  from: number
  to: number
}

export interface CoveredOccurrence extends Occurrence {
  check: CheckId
  station: StationId
  machine: MachineId
}

export interface Coverage extends Span {
  /** In the order of the film's path, and of time within a check. */
  occurrences: CoveredOccurrence[]
  counts: Record<OccurrenceStatus, number>
}

/**
 * Every time that a check was due in a span, and what became of it. An occurrence belongs to the span in which it fell due, or in which it was done
 * ahead of time; so each belongs to exactly one of two neighbouring spans. A schedule that was changed within the span is judged by the one in force
 * at its end.
 */
export const coverage = (lab: Lab, plan: LabPlan, span: Span, now: number): Coverage => {
  const before = lab.stateAt(span.from)
  const lines = lab.ledger.lines.slice(lab.ledger.indexAt(span.from)).filter((line) => line.time <= now && !line.withdrawnBy)
  const answers = answersByCheck(lines)
  const occurrences = plan.machines.flatMap((machine) => {
    const spans = [...(before.machines[machine.id]?.spans ?? []), ...runsOf(lines, machine.id)]
    return checksOfMachine(plan, machine).flatMap((check) =>
      occurrencesOf(plan, before, check, spans, answers.get(check.id) ?? [], span, now).map((it) => ({ ...it, check: check.id, station: check.station, machine: machine.id })),
    )
  })
  const counts: Coverage['counts'] = { done: 0, late: 0, skipped: 0, machineStopped: 0, missed: 0, missedWithReason: 0, pending: 0, overdue: 0 }
  for (const { status } of occurrences) counts[status]++
  return { ...span, occurrences, counts }
}

const occurrencesOf = (plan: LabPlan, before: LabState, check: Check, spans: readonly RunSpan[], answers: readonly Answer[], span: Span, now: number): Occurrence[] => {
  const exists = checkSince(before.plans, check.id, Math.min(span.to, now))
  const stretches = stretchesOf(spans, check.states, exists).filter(({ to }) => to > span.from)
  const all = scheduled(plan, before, check, stretches, answers, span, now)
  const belongsAt = (it: Occurrence): number => Math.min(it.dueAt, it.answeredAt ?? it.dueAt)
  return all.filter((it) => belongsAt(it) >= span.from && belongsAt(it) < span.to)
}

const scheduled = (plan: LabPlan, before: LabState, check: Check, stretches: readonly Stretch[], answers: readonly Answer[], span: Span, now: number): Occurrence[] => {
  const { schedule } = check
  switch (schedule.kind) {
    case 'interval':
      return intervalOccurrences({
        schedule, stretches, now,
        answers: [...earlier(before.checks[check.id]).filter(({ skip }) => skip), ...answers],
        lastBefore: before.checks[check.id]?.recent.at(-1)?.time ?? Number.NEGATIVE_INFINITY,
      })
    case 'shift':
      return shiftOccurrences({ schedule, stretches, answers: [...earlier(before.checks[check.id]), ...answers], now, shifts: shiftsOver(plan, span) })
    case 'state':
      return stateOccurrences({ schedule, stretches, answers: [...earlier(before.checks[check.id]), ...answers], now })
  }
}

/** What was said of a check before the span, in a shift or a state that reaches into it. */
const earlier = (done: CheckNow | undefined): Answer[] => {
  const mark = done?.recent.at(-1)
  const skip = done?.lastSkip
  return [
    ...(skip ? [{ id: skip.id, time: skip.time, person: skip.person, skip: { due: skip.due, reason: skip.reason } }] : []),
    ...(mark ? [{ id: mark.id, time: mark.time, person: mark.person }] : []),
  ]
}

/** The shifts of which a span holds a part, in order. */
export const shiftsOver = (plan: LabPlan, { from, to }: Span): ShiftSpan[] => {
  const shifts: ShiftSpan[] = []
  for (let shift = shiftAt(plan, from); shift.from < to; shift = shiftAt(plan, shift.to)) shifts.push(shift)
  return shifts
}

const runsOf = (lines: readonly Line[], machine: MachineId): RunSpan[] =>
  lines.flatMap((line) =>
    line.kind === 'run' && line.data.machine === machine ? [{ from: line.time, state: line.data.state, metresPerMinute: line.data.metresPerMinute ?? 0 }] : [],
  )

const answersByCheck = (lines: readonly Line[]): Map<CheckId, Answer[]> => {
  const answers = new Map<CheckId, Answer[]>()
  const note = (check: CheckId, answer: Answer): void => {
    const known = answers.get(check)
    if (known) known.push(answer)
    else answers.set(check, [answer])
  }
  for (const line of lines) {
    const common = { id: line.id, time: line.time, person: line.person }
    if (line.kind === 'skip') note(line.data.check, { ...common, skip: { due: line.data.due, reason: line.data.reason } })
    const done = markOf(line)
    if (done) note(done.check, { ...common, ...('repeatOf' in line.data || 'recheckOf' in line.data ? { isAgain: true } : {}) })
  }
  return answers
}
