import * as z from 'zod/mini'
import { checkId, machineId, stationId } from '../plan/ids.ts'
import { entryId } from '../record/ids.ts'
import { timer } from './timer.ts'

const outcome = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('done'), entry: entryId }),
  z.strictObject({ kind: z.literal('skipped'), entry: entryId }),
])

const step = z.strictObject({
  check: checkId,
  /** Two steps at one place are one visit: the label is scanned once, and the time there runs on. */
  station: z.optional(stationId),
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
  /** The instrument is settling. */
  settling: z.optional(timer),
  /** The label at the tank was scanned. */
  atTank: z.boolean(),
})
export type Round = z.infer<typeof round>
export type RoundStep = z.infer<typeof step>

/** What was kept, if it is still a round; anything else is forgotten, since the log holds all that counts. */
export const resumeRound = (kept: unknown): Round | undefined => {
  const parsed = round.safeParse(kept)
  return parsed.success && parsed.data.at < parsed.data.steps.length ? parsed.data : undefined
}

/** How many of its steps have their answer. */
export const doneCount = (it: Round): number => it.steps.filter((each) => each.outcome).length
