import * as z from 'zod/mini'
import { labPlan } from '../plan/lab-plan.ts'
import { deviceId, entryId } from '../record/ids.ts'
import { foldVersion } from './lab-state.ts'

/** A fold up to an instant, for a start without the entries before it. The state is text, as it is put away. */
export const snapshot = z.strictObject({
  v: z.literal(foldVersion),
  /** Lines folded into it. */
  lines: z.int().check(z.minimum(0)),
  /** Key of the last of them. */
  last: z.strictObject({ time: z.number(), dev: deviceId, seq: z.int(), id: entryId }),
  /** Which entries those were. */
  covers: z.record(deviceId, z.array(z.tuple([z.int(), z.int()]))),
  /** Lines that a change among them names and that were not there yet: when one comes, the fold up to here no longer holds. */
  awaited: z.array(entryId),
  plans: z.array(z.strictObject({ id: entryId, from: z.number(), plan: labPlan })),
  state: z.string(),
})
export type Snapshot = z.infer<typeof snapshot>

/** Reads a snapshot that was put away. Undefined where it is of another version or damaged: then the log is folded from its beginning. */
export const parseSnapshot = (raw: unknown): Snapshot | undefined => {
  const parsed = snapshot.safeParse(raw)
  if (!parsed.success) return undefined
  try {
    JSON.parse(parsed.data.state)
  } catch {
    return undefined
  }
  return parsed.data
}
