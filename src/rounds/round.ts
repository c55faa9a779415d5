import type * as z from 'zod/mini'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { entryId } from '../record/ids.ts'
import type { Round, RoundStep } from './kept-round.ts'
import type { Timer } from './timer.ts'
import type { Walk } from './walk.ts'

export const startRound = (walk: Walk, id: string, now: number): Round => ({
  v: 1,
  id,
  machine: walk.machine.id,
  dueAt: walk.dueAt,
  startedAt: now,
  steps: walk.checks.map(({ check, dueAt }) => ({ check: check.id, station: check.station, due: dueAt })),
  at: 0,
  stationSince: now,
  keyed: '',
  atTank: false,
})

export const currentStep = (it: Round): RoundStep => it.steps[it.at]!
export const isFinished = (it: Round): boolean => it.steps.every((each) => each.outcome)

export const key = (it: Round, keyed: string): Round => ({ ...it, keyed })
export const settle = (it: Round, settling: Timer): Round => ({ ...it, settling })
export const scan = (it: Round): Round => ({ ...it, atTank: true })

/** The step is answered by an entry in the log; the next one without an answer is at hand, or the round is finished. */
export const answer = (it: Round, how: 'done' | 'skipped', entry: z.infer<typeof entryId>, now: number): Round => {
  const steps = it.steps.with(it.at, { ...currentStep(it), outcome: { kind: how, entry } })
  return goTo({ ...it, steps }, nextOpen(steps, it.at), now)
}

/** The answer was taken back at once: the step is open again and at hand. */
export const takeBack = (it: Round, entry: string, now: number): Round => {
  const at = it.steps.findIndex((each) => each.outcome?.entry === entry)
  if (at < 0) return it
  const { outcome: _, ...open } = it.steps[at]!
  return goTo({ ...it, steps: it.steps.with(at, open) }, at, now)
}

/** To another step. What was half keyed is dropped; going on at the same station, one is still at its tank. */
export const goTo = (it: Round, at: number, now: number): Round => {
  const { settling: _, ...rest } = it
  const next = Math.max(0, Math.min(it.steps.length - 1, at))
  const here = it.steps[it.at]?.station
  const isSamePlace = here !== undefined && it.steps[next]?.station === here
  return { ...rest, at: next, keyed: '', ...(isSamePlace ? {} : { atTank: false, stationSince: now }) }
}

/** On without an answer, and back: what was left open stays open and is offered again at the end. */
export const goOn = (it: Round, now: number): Round => goTo(it, nextOpen(it.steps, it.at), now)
export const goBack = (it: Round, now: number): Round => goTo(it, it.at - 1, now)

/** Steps that have no answer yet. */
export const openSteps = (it: Round): RoundStep[] => it.steps.filter((each) => !each.outcome)

/** The round without the checks that a revision of the plan took away while it was open; undefined where none is left, or the machine is gone. */
export const fittedTo = (it: Round, plan: LabPlan, now: number): Round | undefined => {
  if (!plan.machines.some(({ id }) => id === it.machine)) return undefined
  const has = (step: RoundStep): boolean => step.outcome !== undefined || plan.checks.some(({ id }) => id === step.check)
  if (it.steps.every(has)) return it
  const steps = it.steps.filter(has)
  if (!steps.length) return undefined
  const here = steps.indexOf(currentStep(it))
  if (here >= 0) return { ...it, steps, at: here }
  const before = it.steps.slice(0, it.at).filter(has).length
  const { settling: _, ...rest } = it
  return { ...rest, steps, at: nextOpen(steps, before - 1), keyed: '', atTank: false, stationSince: now }
}

/** The next step without an answer after this one, else the first without, else where we are. */
const nextOpen = (steps: readonly RoundStep[], at: number): number => {
  const after = steps.findIndex((each, index) => index > at && !each.outcome)
  if (after >= 0) return after
  const first = steps.findIndex((each) => !each.outcome)
  return first >= 0 ? first : Math.max(0, Math.min(at, steps.length - 1))
}
