import * as z from 'zod/mini'
import { deviceId, entryId, hash } from '../record/ids.ts'
import { deviceState } from './messages.ts'
import { chained } from './chained.ts'
import { publicKey } from './receipt.ts'
import { reportRequest } from './report.ts'

export const codesAnswer = z.strictObject({
  /** For the QR: `location.origin + '/' + enrolFragment(long)`. */
  long: z.string(),
  /** Ten characters to key by hand; either form serves, and only once. */
  short: z.string(),
  /** Milliseconds since 1970. */
  until: z.number(),
})
export type CodesAnswer = z.infer<typeof codesAnswer>

export const device = z.strictObject({
  dev: deviceId,
  name: z.string(),
  state: deviceState,
  key: publicKey,
  /** The six digits that its own screen shows while it waits. */
  digits: z.string(),
  enrolledAt: z.number(),
  /** Server clock at its last request. */
  heardAt: z.nullable(z.number()),
  lastSeq: z.number(),
  lastHash: hash,
  /** What it last told of itself, and when. */
  report: z.nullable(z.strictObject({ ...reportRequest.shape, at: z.number() })),
  /** Entries that did not fit its chain, kept aside for a supervisor to look at. */
  aside: z.number(),
})
export type Device = z.infer<typeof device>

export const devicesAnswer = z.strictObject({ devices: z.array(device), serverTime: z.number() })
export type DevicesAnswer = z.infer<typeof devicesAnswer>

/** The digits as the new phone shows them, keyed or compared by the supervisor. */
export const confirmRequest = z.strictObject({ digits: z.string().check(z.regex(/^\d{6}$/)) })
export type ConfirmRequest = z.infer<typeof confirmRequest>

/** `revoked`: lost or stolen. `retired`: its store is gone or it is no longer used. What it sends later is kept in quarantine. */
export const endRequest = z.strictObject({ state: z.enum(['revoked', 'retired']), why: z.string().check(z.minLength(1), z.maxLength(200)) })
export type EndRequest = z.infer<typeof endRequest>
export const deviceAnswer = z.strictObject({ device })

/** Entries kept aside: well signed, but of another history than the one the server holds. */
export const asideAnswer = z.strictObject({
  entries: z.array(z.strictObject({ entry: chained, id: entryId, h: hash, sig: z.string(), recvAt: z.number(), why: z.enum(['fork', 'chain']) })),
})
export type AsideAnswer = z.infer<typeof asideAnswer>
