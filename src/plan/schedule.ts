import * as z from 'zod/mini'

/** What a machine is doing. Checks say in which of these they apply. */
export const machineState = z.enum(['startUp', 'running', 'standby', 'changeOver', 'shutDown', 'stopped'])
export type MachineState = z.infer<typeof machineState>

/**
 * When a check falls due.
 * `interval`: that many minutes after it was last done, or after the machine came into a state in which it applies.
 * `shift`: once in every shift, that many minutes after its start. `state`: once each time the machine comes into the state.
 * Late after the grace; missed when the next one falls due (or the shift, or the state, ends).
 */
export const schedule = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('interval'), minutes: z.number().check(z.gt(0)), graceMinutes: z.number().check(z.minimum(0)) }),
  z.strictObject({ kind: z.literal('shift'), afterMinutes: z.number().check(z.minimum(0)), graceMinutes: z.number().check(z.minimum(0)) }),
  z.strictObject({ kind: z.literal('state'), graceMinutes: z.number().check(z.minimum(0)) }),
])
export type Schedule = z.infer<typeof schedule>
