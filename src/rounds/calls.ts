import type { CheckId, MachineId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { dueChecks } from '../projections/due.ts'
import { mixingUntil, phaseAt } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'
import { answerableExceptions } from '../projections/left-behind.ts'
import type { EntryId } from '../record/ids.ts'

/** Something that asks for a person at an instant: a check that falls due, a bath that has mixed, a reading to be confirmed. */
export interface Call {
  /** The same for the same call, so that nobody is told twice. */
  key: string
  at: number
  why: 'due' | 'mixed' | 'toConfirm'
  check: CheckId
  machine: MachineId
  exception?: EntryId
}

/** What calls now, and when the next call comes; a check that waits for its repeat or its re-check calls as that and not as due besides. */
export const callsAt = (state: LabState, plan: LabPlan, now: number): { calls: Call[]; nextAt: number | undefined } => {
  const open = answerableExceptions(state, plan)
  const later: number[] = []
  const ofExceptions = open.flatMap((exception): Call[] => {
    const { id, check, machine } = exception
    const phase = phaseAt(exception, now)
    const until = mixingUntil(exception)
    if (phase === 'mixing') later.push(until)
    if (phase === 'toRecheck') return [{ key: `mixed:${id}:${until}`, at: until, why: 'mixed', check, machine, exception: id }]
    if (phase === 'toConfirm') return [{ key: `confirm:${id}`, at: exception.openedAt, why: 'toConfirm', check, machine, exception: id }]
    return []
  })
  const spokenFor = new Set(open.map(({ check }) => check))
  const ofChecks = dueChecks(state, plan, now)
    .filter(({ check }) => !spokenFor.has(check.id))
    .flatMap(({ check, machine, dueAt, status }): Call[] => {
      if (status !== 'ahead') return [{ key: `due:${check.id}:${dueAt}`, at: dueAt, why: 'due', check: check.id, machine: machine.id }]
      later.push(dueAt)
      return []
    })
  return { calls: [...ofExceptions, ...ofChecks], nextAt: later.length ? Math.min(...later) : undefined }
}
