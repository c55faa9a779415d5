import * as z from 'zod/mini'
import { quickParse } from './fits.ts'
import { deviceId, entryId, hash, instantText } from './ids.ts'
import { isKind, kinds, type DataOf, type Kind } from './kinds.ts'

/** The envelope: who, when, on which phone, after which entry. Its data is judged apart, by kind. */
export const envelope = z.strictObject({
  v: z.literal(1),
  id: entryId,
  dev: deviceId,
  /** 1, 2, 3 … on this device, without gaps. */
  seq: z.int().check(z.minimum(1)),
  /** Hash of this device's entry before; for the first, hash of its enrolment receipt. */
  prev: hash,
  kind: z.string().check(z.regex(/^[a-zA-Z]{1,32}$/)),
  /** The device's wall clock with its offset. Never rewritten. */
  at: instantText,
  tz: z.string().check(z.maxLength(64)),
  /** Random for each life of a page; within one, `mono` (ms) never runs backwards. */
  sess: z.string().check(z.regex(/^[0-9a-f]{8}$/)),
  mono: z.int().check(z.minimum(0)),
  /** Server minus device, in ms, at the last exchange, and how well that is known. */
  skew: z.nullable(z.strictObject({ ms: z.int(), within: z.int() })),
  op: z.nullable(z.string().check(z.regex(/^[a-z0-9][a-z0-9-]{0,63}$/))),
  data: z.record(z.string(), z.unknown()),
  blobs: z.array(hash).check(z.maxLength(8)),
})
export type Envelope = z.infer<typeof envelope>
export const readEnvelope = quickParse(envelope)

/** An entry whose data fits its kind. */
export type Entry = { [K in Kind]: Omit<Envelope, 'kind' | 'data'> & { kind: K; data: DataOf<K> } }[Kind]
export type EntryOf<K extends Kind> = Extract<Entry, { kind: K }>

/** An entry with its hash and the device's signature (base64url of the 64 bytes r‖s) under it. */
export const sealed = z.strictObject({ entry: envelope, h: hash, sig: z.string().check(z.regex(/^[A-Za-z0-9_-]{86}$/)) })
export type Sealed = z.infer<typeof sealed>

/** `opaque`: a kind of a later version; kept and passed on. `invalid`: kept for the supervisor, counted by no projection. */
export type Understood = { status: 'valid'; entry: Entry } | { status: 'invalid'; why: string } | { status: 'opaque' }

const readData = Object.fromEntries(Object.entries(kinds).map(([kind, schema]) => [kind, quickParse<z.ZodMiniType>(schema)])) as Record<Kind, ReturnType<typeof quickParse<z.ZodMiniType>>>

export const understand = (given: Envelope): Understood => {
  if (!isKind(given.kind)) return { status: 'opaque' }
  const data = readData[given.kind](given.data)
  // No schema of a kind changes what it reads, so the entry itself serves and nothing is copied: a log is a hundred thousand of them.
  if (data.success) return { status: 'valid', entry: given as Entry }
  const [issue] = data.error.issues
  return { status: 'invalid', why: `${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}` }
}
