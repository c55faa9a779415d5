import { canonical } from './canonical.ts'
import type { Envelope, Sealed } from './entry.ts'
import type { Hash } from './ids.ts'

/** Hashing and signing, done by whatever the realm has: WebCrypto on the phone, node:crypto on the server. */
export interface Hasher {
  /** SHA-256 of the UTF-8 text, in hex. */
  sha256(text: string): Promise<Hash>
}
export interface Signer extends Hasher {
  /** ECDSA P-256 with SHA-256, r‖s, base64url. */
  sign(text: string): Promise<string>
}
export interface Verifier extends Hasher {
  verify(publicKey: PublicKey, text: string, signature: string): Promise<boolean>
}
/** The public half of a device's key, as a JSON Web Key. */
export interface PublicKey {
  kty: 'EC'
  crv: 'P-256'
  x: string
  y: string
}

/** What a device signs: the hash with a mark of what it is, so that no signature can serve for something else. */
export const signedText = (h: Hash): string => `e1|${h}`

export const seal = async (entry: Envelope, signer: Signer): Promise<Sealed> => {
  const h = await signer.sha256(canonical(entry))
  return { entry, h, sig: await signer.sign(signedText(h)) }
}

export type SealProblem = 'hash' | 'signature'

/** Whether hash and signature fit the entry. */
export const sealProblem = async (given: Sealed, publicKey: PublicKey, verifier: Verifier): Promise<SealProblem | undefined> => {
  if ((await verifier.sha256(canonical(given.entry))) !== given.h) return 'hash'
  return (await verifier.verify(publicKey, signedText(given.h), given.sig)) ? undefined : 'signature'
}
