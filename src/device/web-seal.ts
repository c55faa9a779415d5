import type { Hash } from '../record/ids.ts'
import type { Hasher, PublicKey, Signer, Verifier } from '../record/seal.ts'

/** Hashing, signing and verifying with WebCrypto: a private key that cannot be taken out, P-256 because every browser in use has it. */
const algorithm = { name: 'ECDSA', namedCurve: 'P-256' } as const
const signature = { name: 'ECDSA', hash: 'SHA-256' } as const

const utf8 = new TextEncoder()

export const base64url = (bytes: Uint8Array): string => {
  let binary = ''
  for (const byte of bytes) binary += String.fromCharCode(byte)
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}

export const fromBase64url = (text: string): Uint8Array<ArrayBuffer> => {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  const bytes = new Uint8Array(binary.length)
  for (let place = 0; place < binary.length; place++) bytes[place] = binary.charCodeAt(place)
  return bytes
}

const inHex = Array.from({ length: 256 }, (_, byte) => byte.toString(16).padStart(2, '0'))

export const sha256OfBytes = async (bytes: BufferSource): Promise<Hash> => {
  let text = ''
  for (const byte of new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))) text += inHex[byte]
  return text as Hash
}

export const webHasher: Hasher = { sha256: (text) => sha256OfBytes(utf8.encode(text)) }

export const webSigner = (privateKey: CryptoKey): Signer => ({
  ...webHasher,
  sign: async (text) => base64url(new Uint8Array(await crypto.subtle.sign(signature, privateKey, utf8.encode(text)))),
})

/** Imported keys are kept, as a page of the record holds hundreds of entries by a few devices. */
export const createWebVerifier = (): Verifier => {
  const imported = new Map<string, Promise<CryptoKey>>()
  const importKey = (key: PublicKey): Promise<CryptoKey> => {
    const name = `${key.x}.${key.y}`
    const known = imported.get(name) ?? crypto.subtle.importKey('jwk', key, algorithm, true, ['verify'])
    imported.set(name, known)
    return known
  }
  return {
    ...webHasher,
    async verify(publicKey, text, given) {
      try {
        return await crypto.subtle.verify(signature, await importKey(publicKey), fromBase64url(given), utf8.encode(text))
      } catch {
        // A key that is no point of the curve, or a signature that is no base64: either way it does not verify.
        return false
      }
    },
  }
}

export const createKeyPair = async (): Promise<CryptoKeyPair> => crypto.subtle.generateKey(algorithm, false, ['sign', 'verify'])

export const publicHalf = async (pair: CryptoKeyPair): Promise<PublicKey> => {
  const { x, y } = await crypto.subtle.exportKey('jwk', pair.publicKey)
  return { kty: 'EC', crv: 'P-256', x: x!, y: y! }
}
