import * as z from 'zod/mini'
import { checkId, machineId } from '../plan/ids.ts'
import { entryId } from '../record/ids.ts'
import type { Walk } from './walk.ts'

const outcome = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('done'), entry: entryId }),
  z.strictObject({ kind: z.literal('skipped'), entry: entryId }),
])

const step = z.strictObject({
  check: checkId,
  due: z.number(),
  outcome: z.optional(outcome),
})

/**
 * A round under way, as it is kept on the phone between two taps: a dead battery, an update or a call costs nothing. What was read is in
 * the log already; this is only the walk and what is half keyed.
 */
export const round = z.strictObject({
  v: z.literal(1),
  id: z.string(),
  machine: machineId,
  dueAt: z.number(),
  startedAt: z.number(),
  steps: z.array(step).check(z.minLength(1)),
  at: z.int().check(z.minimum(0)),
  /** When the person came to the station of this step. */
  stationSince: z.number(),
  /** Half keyed. */
  keyed: z.string(),
  /** Settling began at this instant. */
  settlingSince: z.optional(z.number()),
  /** The label at the tank was scanned. */
  atTank: z.boolean(),
})
export type Round = z.infer<typeof round>
export type RoundStep = z.infer<typeof step>

export const startRound = (walk: Walk, id: string, now: number): Round => ({
  v: 1,
  id,
  machine: walk.machine.id,
  dueAt: walk.dueAt,
  startedAt: now,
  steps: walk.checks.map(({ check, dueAt }) => ({ check: check.id, due: dueAt })),
  at: 0,
  stationSince: now,
  keyed: '',
  atTank: false,
})

/** What was kept, if it is still a round; anything else is forgotten, since the log holds all that counts. */
export const resumeRound = (kept: unknown): Round | undefined => {
  const parsed = round.safeParse(kept)
  return parsed.success && parsed.data.at < parsed.data.steps.length ? parsed.data : undefined
}

export const currentStep = (it: Round): RoundStep => it.steps[it.at]!
export const doneCount = (it: Round): number => it.steps.filter((each) => each.outcome).length
export const isFinished = (it: Round): boolean => it.steps.every((each) => each.outcome)

export const key = (it: Round, keyed: string): Round => ({ ...it, keyed })
export const settle = (it: Round, now: number): Round => ({ ...it, settlingSince: now })
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

export const goTo = (it: Round, at: number, now: number): Round => {
  const { settlingSince: _, ...rest } = it
  return { ...rest, at: Math.max(0, Math.min(it.steps.length - 1, at)), keyed: '', atTank: false, stationSince: now }
}

/** The next step without an answer after this one, else the first without, else where we are. */
const nextOpen = (steps: readonly RoundStep[], at: number): number => {
  const after = steps.findIndex((each, index) => index > at && !each.outcome)
  if (after >= 0) return after
  const first = steps.findIndex((each) => !each.outcome)
  return first >= 0 ? first : at
}
