import * as z from 'zod/mini'
import { personId } from '../plan/ids.ts'
import { canonical } from '../record/canonical.ts'
import { deviceId, hash, type Hash } from '../record/ids.ts'
import type { Countersign } from '../record/kinds/sign-off.ts'

/**
 * A supervisor keys the passphrase anew, and the server gives a proof that this was so, on this device, just now. With `about` it serves
 * for one signature: the `proof` of a `signOff` (about = its `digest`) or `countersign` (about = SHA-256 of `countersignAbout`). Without,
 * it goes in the header `Presence` of what only a supervisor may do (codes, devices, people).
 */
export const presenceRequest = z.strictObject({
  person: personId,
  passphrase: z.string().check(z.minLength(1), z.maxLength(200)),
  about: z.optional(hash),
})
export type PresenceRequest = z.infer<typeof presenceRequest>

export const presenceAnswer = z.strictObject({
  proof: z.string(),
  /** Milliseconds since 1970, server clock: ten minutes from now. */
  until: z.number(),
})
export type PresenceAnswer = z.infer<typeof presenceAnswer>

export const countersignAbout = ({ ref, late }: Pick<Countersign, 'ref' | 'late'>): string => canonical({ late, ref })

export interface Presence {
  person: string
  dev: string
  epoch: string
  from: number
  until: number
  /** Hash of what is signed; empty where the proof is for managing. */
  about: Hash | ''
}

/** Signed by the server. */
export const presenceText = ({ person, dev, epoch, from, until, about }: Presence): string => `p1.${person}.${dev}.${epoch}.${from}.${until}.${about}`

const parts = z.strictObject({ person: personId, dev: deviceId, epoch: z.string(), from: z.int(), until: z.int(), about: z.union([hash, z.literal('')]) })

/** A proof is its text, a full stop and the server's signature over the text. */
export const parseProof = (proof: string): { presence: Presence; text: string; sig: string } | undefined => {
  const [mark, person, dev, epoch, from, until, about, sig, ...more] = proof.split('.')
  if (mark !== 'p1' || !sig || more.length) return undefined
  const parsed = parts.safeParse({ person, dev, epoch, from: Number(from), until: Number(until), about })
  if (!parsed.success) return undefined
  const text = presenceText(parsed.data)
  return text === proof.slice(0, -(sig.length + 1)) ? { presence: parsed.data, text, sig } : undefined
}
