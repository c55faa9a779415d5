import * as z from 'zod/mini'
import { machineId } from '../../plan/ids.ts'
import { machineState } from '../../plan/schedule.ts'
import { instantText } from '../ids.ts'

/** A machine comes into a state; the speed counts while film runs. */
export const run = z.strictObject({
  machine: machineId,
  state: machineState,
  metresPerMinute: z.optional(z.number().check(z.minimum(0))),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Run = z.infer<typeof run>
