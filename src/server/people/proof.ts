import type { Hash } from '../../record/ids.ts'
import { parseProof, presenceText, type Presence } from '../../wire/presence.ts'
import type { ServerKey } from '../keys.ts'

export const proofMs = 600_000
/** A phone's clock, though corrected, and the way of a request. */
const slackMs = 120_000

export const makeProof = (key: ServerKey, presence: Presence): string => {
  const text = presenceText(presence)
  return `${text}.${key.sign(text)}`
}

/** What a proof says, where this server gave it. Whether it fits the purpose is for the caller to say. */
export const readProof = (key: ServerKey, proof: string): Presence | undefined => {
  const parsed = parseProof(proof)
  return parsed && key.verify(parsed.text, parsed.sig) ? parsed.presence : undefined
}

/** Whether a proof stands behind a signature: that person, that device, that content, within the proof's ten minutes by either clock. */
export const provesSignature = (
  key: ServerKey,
  proof: string | undefined,
  signature: { person: string | null; dev: string; about: Hash; atMs: number; recvAt: number },
): boolean => {
  const presence = proof === undefined ? undefined : readProof(key, proof)
  if (!presence) return false
  const within = (instant: number): boolean => instant >= presence.from - slackMs && instant <= presence.until + slackMs
  return (
    presence.person === signature.person &&
    presence.dev === signature.dev &&
    presence.about === signature.about &&
    (within(signature.atMs) || within(signature.recvAt))
  )
}
