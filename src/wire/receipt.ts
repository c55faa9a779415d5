import * as z from 'zod/mini'
import { deviceId, hash } from '../record/ids.ts'

export const publicKey = z.strictObject({ kty: z.literal('EC'), crv: z.literal('P-256'), x: z.string(), y: z.string() })

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
  /** The server's signature over `receiptText`: with it a server that was restored from an older backup knows the device again. */
  sig: z.string(),
})
export type Receipt = z.infer<typeof receipt>
