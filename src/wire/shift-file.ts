import * as z from 'zod/mini'
import { shiftId } from '../plan/ids.ts'
import { deviceId, hash, instantText } from '../record/ids.ts'
import { chained } from './chained.ts'
import { publicKey } from './receipt.ts'

/**
 * One shift with everything that is needed to prove it: its entries as their devices sealed them, the signatures under it, and the keys.
 * Of each device the entries stand in one unbroken run from its first of the shift to its last that a signature covers, so that nothing can
 * have been left out between; entries of that run that belong to another shift prove the chain and nothing else.
 */
export const shiftFile = z.strictObject({
  format: z.literal('bathkeeper-shift'),
  v: z.literal(1),
  laboratory: z.string(),
  /** ISO 8601 with offset. */
  made: instantText,
  timeZone: z.string(),
  /** Span in milliseconds since 1970: from ≤ t < to. */
  shift: z.strictObject({ id: shiftId, name: z.string(), date: z.string(), from: z.number(), to: z.number() }),
  /** Whose key signs heads and the proofs that a supervisor signed in anew. */
  server: z.strictObject({ epoch: z.string(), key: publicKey }),
  /** `seed` is the `prev` of the device's first entry, where it is known here. */
  devices: z.array(z.strictObject({ dev: deviceId, name: z.string(), key: publicKey, seed: z.optional(hash) })),
  /** By device and number. `uncounted`: kept, but counted nowhere, and under no signature: it stands here for the chain alone. */
  entries: z.array(z.strictObject({ entry: chained, h: hash, sig: z.string(), uncounted: z.optional(z.enum(['invalid', 'opaque', 'quarantined'])) })),
})
export type ShiftFile = z.infer<typeof shiftFile>

/** One entry a line, so that a reader can be told which line is wrong and even an editor can show it. */
export const shiftFileText = ({ entries, ...head }: ShiftFile): string =>
  `${JSON.stringify(head).slice(0, -1)},"entries":[\n${entries.map((one) => JSON.stringify(one)).join(',\n')}\n]}\n`
