import * as z from 'zod/mini'
import { envelope, sealed } from '../record/entry.ts'
import { deviceId, entryId, hash } from '../record/ids.ts'
import { head } from '../record/kinds/sign-off.ts'
import { chained } from './chained.ts'
import { largestPull, largestPush } from './largest.ts'
import { publicKey } from './receipt.ts'

/** Version of this page. The server speaks the current one and the one before, so an older phone can hand in what it holds. */
export const wireVersion = 1

/** `waiting` for the supervisor's confirmation; `revoked` when lost; `quarantined` after a fork; `retired` when its store is gone. */
export const deviceState = z.enum(['waiting', 'enrolled', 'revoked', 'quarantined', 'retired'])
export type DeviceState = z.infer<typeof deviceState>

/** A name that people give: no control characters, which a terminal or a log would obey. */
export const shownName = z.string().check(z.minLength(1), z.maxLength(60), z.regex(/^\P{Cc}+$/u))

// ── Enrolment ────────────────────────────────────────────────────────────────────────────────────────────────────────
/** A device asks in with a one-time code, written as `plainCode` leaves it; `sig` is its signature over `enrolText(code)`. */
export const enrolRequest = z.strictObject({
  code: z.string().check(z.minLength(10), z.maxLength(64)),
  key: publicKey,
  name: shownName,
  sig: z.string(),
  /** Only with the first code of a new server, printed in its terminal: who the first supervisor is. */
  firstSupervisor: z.optional(z.strictObject({ name: shownName, passphrase: z.string().check(z.minLength(8), z.maxLength(200)) })),
})
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
  /**
   * `quarantined`, `revoked`, `retired` come together with acknowledgements: the entries are kept, but count for nothing until a supervisor
   * has looked. `chain`: its `prev` is not the hash the server has; send again from `want`. `fork`: the device has written two histories;
   * it must be enrolled anew, and what did not fit is kept aside. `epoch`: the server was restored; ask `me` and send again from there.
   */
  code: z.enum(['gap', 'fork', 'signature', 'chain', 'quarantined', 'revoked', 'retired', 'epoch', 'envelope', 'tooLarge', 'quota']),
  /** The entry at which the server stopped. */
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
export type Status = z.infer<typeof status>

const stored = {
  h: hash,
  sig: z.string(),
  gseq: z.number(),
  /** Server clock, milliseconds since 1970. */
  recvAt: z.number(),
  /** Server chain after this entry. */
  sh: hash,
  /** Clock of the phone off by more than two minutes; wall clock run backwards by more than two seconds within a page's life. Nothing is rewritten. */
  flags: z.optional(z.array(z.enum(['skew', 'backwards']))),
}
export const pulled = z.discriminatedUnion('status', [
  z.strictObject({ status: z.literal('valid'), entry: envelope, ...stored }),
  z.strictObject({
    status: z.enum(['invalid', 'opaque', 'quarantined']),
    entry: chained,
    ...stored,
    /** For the supervisor: what did not fit, as `path: reason`, or one of `role`, `proof`, `repeatedId`, `revoked`, `retired`, `fork`. */
    why: z.optional(z.string()),
  }),
])
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
  devices: z.array(z.strictObject({ dev: deviceId, name: z.string(), key: publicKey, state: deviceState, seed: hash })),
  serverTime: z.number(),
  head,
})
export type PullAnswer = z.infer<typeof pullAnswer>

// ── Refusals ─────────────────────────────────────────────────────────────────────────────────────────────────────────
/** Every refusal of the server; the phone has a sentence for each. */
export const refusal = z.strictObject({
  error: z.enum([
    'unknownVersion', 'badRequest', 'tooLarge', 'encoded', 'mediaType', 'lengthRequired', 'unauthorised', 'nonce', 'presence', 'forbidden',
    'crossSite', 'notFound', 'tooMany', 'codeUsed', 'codeUnknown', 'passphrase', 'digits', 'notConfirmed', 'revoked', 'retired',
    'quarantined', 'epoch', 'hash', 'quota', 'notDemo', 'lastSupervisor', 'timeout', 'busy', 'full', 'fault',
  ]),
  /** Where in the request, or what would have been right; never a sentence for people. */
  detail: z.optional(z.string()),
  /** A fresh nonce comes with `nonce`; seconds to wait with `tooMany`. */
  nonce: z.optional(z.string()),
  retryAfter: z.optional(z.number()),
})
export type WireRefusal = z.infer<typeof refusal>
