import * as z from 'zod/mini'
import { machineId } from '../../plan/ids.ts'
import { machineState } from '../../plan/schedule.ts'

/** A machine comes into a state; the speed counts while film runs. */
export const run = z.strictObject({
  machine: machineId,
  state: machineState,
  metresPerMinute: z.optional(z.number().check(z.minimum(0))),
})
export type Run = z.infer<typeof run>
