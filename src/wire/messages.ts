import * as z from 'zod/mini'
import { envelope, sealed } from '../record/entry.ts'
import { deviceId, entryId, hash } from '../record/ids.ts'
import { head } from '../record/kinds/sign-off.ts'

/** Version of this page. The server speaks the current one and the one before, so an older phone can hand in what it holds. */
export const wireVersion = 1

export const largestPush = { entries: 200, bytes: 1 << 20, bytesPerEntry: 1 << 16 } as const
export const largestPull = 500

export const publicKey = z.strictObject({ kty: z.literal('EC'), crv: z.literal('P-256'), x: z.string(), y: z.string() })

// ── Enrolment ────────────────────────────────────────────────────────────────────────────────────────────────────────
/** A device asks in with a one-time code; `sig` is its signature over `enrol1|code`. */
export const enrolRequest = z.strictObject({
  code: z.string().check(z.minLength(10), z.maxLength(64)),
  key: publicKey,
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  sig: z.string(),
  /** Only with the first code of a new server, printed in its terminal: who the first supervisor is. */
  firstSupervisor: z.optional(z.strictObject({ name: z.string().check(z.minLength(1), z.maxLength(60)), passphrase: z.string().check(z.minLength(8), z.maxLength(200)) })),
})
/** What the device is from now on. `seed` is the `prev` of its first entry. `digits` are shown on both screens. */
export const receipt = z.strictObject({
  v: z.literal(1),
  dev: deviceId,
  epoch: z.string(),
  serverKey: publicKey,
  seed: hash,
  digits: z.string().check(z.regex(/^\d{6}$/)),
  state: z.enum(['waiting', 'enrolled']),
  /** Person id of the first supervisor, where this enrolment made one. */
  person: z.optional(z.string()),
})
export type Receipt = z.infer<typeof receipt>

// ── Push ─────────────────────────────────────────────────────────────────────────────────────────────────────────────
/** Consecutive entries of one device. The server looks into each only after its chain and signature hold. */
export const pushRequest = z.strictObject({
  v: z.literal(wireVersion),
  dev: deviceId,
  epoch: z.string(),
  entries: z.array(sealed).check(z.minLength(1), z.maxLength(largestPush.entries)),
})
export type PushRequest = z.infer<typeof pushRequest>

export const pushError = z.strictObject({
  code: z.enum(['gap', 'fork', 'signature', 'chain', 'quarantined', 'revoked', 'epoch', 'envelope', 'quota']),
  seq: z.optional(z.number()),
  /** The sequence number the server wants next. */
  want: z.optional(z.number()),
})
export const pushAnswer = z.strictObject({
  v: z.literal(wireVersion),
  lastSeq: z.number(),
  lastHash: hash,
  /** Names every entry that is now safe: an entry leaves the outbox for no other reason. */
  acks: z.array(z.strictObject({ id: entryId, seq: z.number(), gseq: z.number() })),
  error: z.optional(pushError),
  serverTime: z.number(),
  head,
})
export type PushAnswer = z.infer<typeof pushAnswer>

// ── Pull ─────────────────────────────────────────────────────────────────────────────────────────────────────────────
export const status = z.enum(['valid', 'invalid', 'opaque', 'quarantined'])
export const pulled = z.strictObject({
  entry: envelope,
  h: hash,
  sig: z.string(),
  gseq: z.number(),
  /** Server clock, milliseconds since 1970. */
  recvAt: z.number(),
  status,
  /** Server chain after this entry. */
  sh: hash,
})
export type Pulled = z.infer<typeof pulled>

export const pullAnswer = z.strictObject({
  v: z.literal(wireVersion),
  epoch: z.string(),
  entries: z.array(pulled).check(z.maxLength(largestPull)),
  next: z.number(),
  more: z.boolean(),
  /** Server chain value before the first entry of this page. */
  before: hash,
  /** Devices whose entries this page holds, to verify their signatures. */
  devices: z.array(z.strictObject({ dev: deviceId, name: z.string(), key: publicKey, state: z.enum(['waiting', 'enrolled', 'revoked', 'quarantined', 'retired']) })),
  serverTime: z.number(),
  head,
})
export type PullAnswer = z.infer<typeof pullAnswer>

// ── Refusals ─────────────────────────────────────────────────────────────────────────────────────────────────────────
/** Every refusal of the server; the phone has a sentence for each. */
export const refusal = z.strictObject({
  error: z.enum([
    'unknownVersion', 'badRequest', 'tooLarge', 'encoded', 'unauthorised', 'nonce', 'forbidden', 'notFound', 'tooMany', 'codeUsed',
    'codeUnknown', 'passphrase', 'notConfirmed', 'revoked', 'quarantined', 'epoch', 'busy', 'fault',
  ]),
  /** Where in the request, or what would have been right; never a sentence for people. */
  detail: z.optional(z.string()),
  /** A fresh nonce comes with `nonce`; seconds to wait with `tooMany`. */
  nonce: z.optional(z.string()),
  retryAfter: z.optional(z.number()),
})
export type WireRefusal = z.infer<typeof refusal>
