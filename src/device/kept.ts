import * as z from 'zod/mini'
import { envelope } from '../record/entry.ts'
import { hash } from '../record/ids.ts'
import { chained, type Chained } from '../wire/chained.ts'

const common = {
  h: hash,
  sig: z.string(),
  /** Wall clock corrected by the clock error then known, ms since 1970: the order in which entries are shown. */
  time: z.number(),
  /** The server's number, and the database of the server in which it holds. */
  epoch: z.optional(z.string()),
  gseq: z.optional(z.number()),
  /** Server clock, ms since 1970. */
  recvAt: z.optional(z.number()),
  flags: z.optional(z.array(z.enum(['skew', 'backwards']))),
  /** Why the server, or this phone, does not count it: as the wire says it, or what of its seal did not fit. */
  why: z.optional(z.string()),
}
const counted = z.strictObject({ status: z.literal('valid'), entry: envelope, ...common })
const uncounted = z.strictObject({ status: z.enum(['invalid', 'opaque', 'quarantined']), entry: chained, ...common })

/** An entry as this phone keeps it: sealed, and with what the server said of it, once it has it. */
export const kept = z.discriminatedUnion('status', [counted, uncounted])
export type Kept = z.infer<typeof kept>
/** One that the projections fold. The others are kept, passed on and shown to the supervisor. */
export type Counted = z.infer<typeof counted>

export const isCounted = (given: Kept): given is Counted => given.status === 'valid'

/** A date that the calendar does not have leaves the entry at the server's time, or at the very start, never out of the order. */
export const correctedTime = (entry: Chained, recvAt?: number): number => {
  const at = typeof entry['at'] === 'string' ? Date.parse(entry['at']) : Number.NaN
  if (!Number.isFinite(at)) return recvAt ?? 0
  const skew = (entry['skew'] as { ms?: unknown } | null | undefined)?.ms
  return at + (typeof skew === 'number' ? skew : 0)
}

export const inOrder = (a: Kept, b: Kept): number =>
  a.time - b.time || (a.entry.dev < b.entry.dev ? -1 : a.entry.dev > b.entry.dev ? 1 : 0) || a.entry.seq - b.entry.seq
