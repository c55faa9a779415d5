import * as z from 'zod/mini'
import { sealed } from '../record/entry.ts'
import { deviceId, hash } from '../record/ids.ts'
import { largestPush } from './largest.ts'
import { pushAnswer, wireVersion } from './messages.ts'
import { chained } from './chained.ts'
import { publicKey } from './receipt.ts'

/**
 * The record of any span, to keep and to bring back: every entry that speaks for an instant of it or was entered in it, as its device sealed it, and
 * the keys. Of each device the entries stand in one unbroken run. Nothing in the file says when or where it was made, so that the same record gives
 * the same bytes again. Photos are named by their hash and not in it.
 */
export const recordFile = z.strictObject({
  format: z.literal('bathkeeper-record'),
  v: z.literal(1),
  laboratory: z.string(),
  timeZone: z.string(),
  /** Milliseconds since 1970: from ≤ t < to; null where it is open. */
  span: z.strictObject({ from: z.nullable(z.number()), to: z.nullable(z.number()) }),
  /** Whose key signs heads and the proofs that a supervisor signed in anew. */
  server: z.strictObject({ key: publicKey }),
  /** `seed` is the `prev` of the device's first entry, where it is known here. */
  devices: z.array(z.strictObject({ dev: deviceId, name: z.string(), key: publicKey, seed: z.optional(hash) })),
  /** By device and number. `uncounted`: kept, but counted nowhere. */
  entries: z.array(z.strictObject({ entry: chained, h: hash, sig: z.string(), uncounted: z.optional(z.enum(['invalid', 'opaque', 'quarantined'])) })),
})
export type RecordFile = z.infer<typeof recordFile>

/** One entry a line, so that a reader can be told which line is wrong and even an editor can show it. */
export const recordFileText = ({ entries, ...head }: RecordFile): string =>
  `${JSON.stringify(head).slice(0, -1)},"entries":[\n${entries.map((one) => JSON.stringify(one)).join(',\n')}\n]}\n`

/** Consecutive entries of one device out of such a file. They prove themselves, so any enrolled device may bring them back. */
export const recordImportRequest = z.strictObject({
  v: z.literal(wireVersion),
  dev: deviceId,
  entries: z.array(sealed).check(z.minLength(1), z.maxLength(largestPush.entries)),
})

/** As for a push, of the device that the entries are from. */
export const recordImportAnswer = pushAnswer
