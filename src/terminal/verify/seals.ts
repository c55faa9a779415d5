import { createHash, createPublicKey, verify } from 'node:crypto'

export const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex')

export interface Key {
  kty: string
  crv: string
  x: string
  y: string
}

/** ECDSA on P-256 with SHA-256, the signature as 64 bytes r‖s in base64url. */
export const isSignedBy = (key: Key, text: string, signature: string): boolean => {
  const bytes = Buffer.from(signature, 'base64url')
  // One signature has one writing: the spare bits of its last letter are nought.
  if (bytes.toString('base64url') !== signature) return false
  try {
    const object = createPublicKey({ key: { kty: key.kty, crv: key.crv, x: key.x, y: key.y }, format: 'jwk' })
    return verify('sha256', Buffer.from(text, 'utf8'), { key: object, dsaEncoding: 'ieee-p1363' }, bytes)
  } catch {
    // No point of the curve: nobody can have signed with it.
    return false
  }
}

/** RFC 7638. */
export const thumbprint = ({ crv, kty, x, y }: Key): string => sha256(JSON.stringify({ crv, kty, x, y }))
