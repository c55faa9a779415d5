import * as z from 'zod/mini'
import { shiftId } from '../../plan/ids.ts'
import { deviceId, entryId, hash } from '../ids.ts'

/** The server's signed word on how far its record goes. */
export const head = z.strictObject({ epoch: z.string(), gseq: z.number(), sh: hash, time: z.string(), sig: z.string() })
export type Head = z.infer<typeof head>

/** A supervisor's signature under a shift. Entries of its span beyond `covers` came later. */
export const signOff = z.strictObject({
  shift: shiftId,
  /** The shift's date in the laboratory's time zone: `2026-01-12`. */
  date: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/)),
  /** Span in milliseconds since 1970: from ≤ t < to. */
  from: z.number(),
  to: z.number(),
  covers: z.record(deviceId, z.number()),
  /** SHA-256 over the ids and hashes that the signature covers, in order. */
  digest: hash,
  head: z.optional(head),
  openItems: z.array(z.strictObject({ code: z.string(), ref: z.optional(z.string()) })),
  meaning: z.literal('reviewedAndReleased'),
  remark: z.optional(z.string().check(z.maxLength(2000))),
  /** Signed without the server's word that it is the supervisor: stands until confirmed. */
  provisional: z.boolean(),
  /** The server's proof that the supervisor signed in anew. */
  proof: z.optional(z.string()),
})
export type SignOff = z.infer<typeof signOff>

/** A second signature, under what arrived after the first. */
export const countersign = z.strictObject({
  ref: entryId,
  late: z.array(entryId).check(z.minLength(1)),
  provisional: z.boolean(),
  proof: z.optional(z.string()),
  remark: z.optional(z.string().check(z.maxLength(2000))),
})
export type Countersign = z.infer<typeof countersign>

export const handover = z.strictObject({
  shift: shiftId,
  date: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/)),
  notes: z.string().check(z.maxLength(4000)),
  /** Exceptions that stay open, by the reading that opened them. */
  open: z.array(entryId),
  /** What the one who came has looked at, item by item, before accepting: holds, exceptions, mixing times and the rest, by the entry or the place. */
  walked: z.optional(z.array(z.strictObject({ what: z.string().check(z.maxLength(40)), ref: z.string().check(z.maxLength(80)) })).check(z.maxLength(200))),
  /** `given` by the one who leaves, `accepted` by the one who comes. */
  side: z.enum(['given', 'accepted']),
})
export type Handover = z.infer<typeof handover>
