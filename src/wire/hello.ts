import * as z from 'zod/mini'
import { hash, deviceId } from '../record/ids.ts'
import { head } from '../record/kinds/sign-off.ts'
import { deviceState, shownName } from './messages.ts'
import { publicKey, receipt } from './receipt.ts'

/** What anybody may know of a server. Its header `Next-Nonce` spares a device the first refusal. */
export const helloAnswer = z.strictObject({
  app: z.literal('bathkeeper'),
  /** Wire versions it speaks, oldest and newest. */
  wire: z.strictObject({ oldest: z.number(), newest: z.number() }),
  epoch: z.string(),
  /** A first supervisor exists. Until then the code printed in the terminal of the server makes one. */
  claimed: z.boolean(),
  serverKey: publicKey,
  /** Milliseconds since 1970. */
  serverTime: z.number(),
})
export type HelloAnswer = z.infer<typeof helloAnswer>

/** What the server knows of the asking device: polled while it waits to be confirmed, and asked when the epoch has changed. */
export const meAnswer = z.strictObject({
  dev: deviceId,
  name: z.string(),
  state: deviceState,
  /** The last entry the server holds; 0 and the seed where there is none. */
  lastSeq: z.number(),
  lastHash: hash,
  epoch: z.string(),
  serverTime: z.number(),
  head,
})
export type MeAnswer = z.infer<typeof meAnswer>

/**
 * A device that the server does not know, because the server was restored from a backup older than the enrolment, shows the receipt the
 * same server signed; `sig` is its own signature over `enrolText(receipt.sig)`. It then waits for a supervisor like a new one, keeps
 * its id and chain, and loses nothing it holds.
 */
export const enrolAgainRequest = z.strictObject({
  receipt: z.strictObject({ dev: deviceId, epoch: z.string().check(z.maxLength(64)), seed: hash, sig: z.string().check(z.maxLength(128)) }),
  key: publicKey,
  name: shownName,
  sig: z.string(),
})
export type EnrolAgainRequest = z.infer<typeof enrolAgainRequest>
export const enrolAgainAnswer = receipt
