import {
  createHmac, createPrivateKey, createPublicKey, generateKeyPairSync, hash, hkdfSync, sign, timingSafeEqual, verify, type KeyObject,
} from 'node:crypto'
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import type { Hash } from '../record/ids.ts'
import type { PublicKey, Verifier } from '../record/seal.ts'

/** Signing and hashing of this realm: `node:crypto` under the ports of the record. */
export const sha256 = (data: string | Uint8Array): Hash => hash('sha256', data) as Hash

const textToVerify = (text: string): Buffer => Buffer.from(text, 'utf8')

/** A key given from outside: refused (undefined) where it is no point of the curve. */
export const readPublicKey = ({ x, y }: Pick<PublicKey, 'x' | 'y'>): KeyObject | undefined => {
  try {
    return createPublicKey({ key: { kty: 'EC', crv: 'P-256', x, y }, format: 'jwk' })
  } catch {
    return undefined
  }
}

export const verifyText = (key: KeyObject, text: string, signature: string): boolean =>
  verify('sha256', textToVerify(text), { key, dsaEncoding: 'ieee-p1363' }, Buffer.from(signature, 'base64url'))

/** The same on one of Node's own threads: a phone that hands in hundreds of entries keeps neither the others waiting nor a second core idle. */
export const verifyTextAside = (key: KeyObject, text: string, signature: string): Promise<boolean> =>
  new Promise((resolve, reject) => {
    verify('sha256', textToVerify(text), { key, dsaEncoding: 'ieee-p1363' }, Buffer.from(signature, 'base64url'), (error, isRight) => (error ? reject(error) : resolve(isRight)))
  })

export const verifier: Verifier = {
  sha256: (text) => Promise.resolve(sha256(text)),
  verify: (publicKey, text, signature) => {
    const key = readPublicKey(publicKey)
    return Promise.resolve(key !== undefined && verifyText(key, text, signature))
  },
}

/** The server's own key: signs heads, receipts and proofs of presence. What it keys with HMAC is worth nothing to who has only the database. */
export interface ServerKey {
  readonly publicKey: PublicKey
  sign(text: string): string
  verify(text: string, signature: string): boolean
  /** HMAC-SHA-256, base64url; each purpose has a key of its own. */
  mac(purpose: 'code' | 'nonce', text: string): string
}

export const serverKey = (privateKey: KeyObject): ServerKey => {
  const publicObject = createPublicKey(privateKey)
  const { x, y } = publicObject.export({ format: 'jwk' })
  const secret = privateKey.export({ format: 'der', type: 'pkcs8' })
  const macKeys = {
    code: Buffer.from(hkdfSync('sha256', secret, '', 'bathkeeper code', 32)),
    nonce: Buffer.from(hkdfSync('sha256', secret, '', 'bathkeeper nonce', 32)),
  }
  return {
    publicKey: { kty: 'EC', crv: 'P-256', x: x!, y: y! },
    sign: (text) => sign('sha256', textToVerify(text), { key: privateKey, dsaEncoding: 'ieee-p1363' }).toString('base64url'),
    verify: (text, signature) => verifyText(publicObject, text, signature),
    mac: (purpose, text) => createHmac('sha256', macKeys[purpose]).update(text).digest('base64url'),
  }
}

export const newPrivateKey = (): KeyObject => generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey

/** The key kept in a file that only its owner may read; undefined where there is no such file. */
export const readKeyFile = (file: string): ServerKey | undefined =>
  existsSync(file) ? serverKey(createPrivateKey(readFileSync(file))) : undefined

export const writeKeyFile = (file: string): ServerKey => {
  const key = newPrivateKey()
  writeFileSync(file, key.export({ format: 'pem', type: 'pkcs8' }), { mode: 0o600, flag: 'wx', flush: true })
  chmodSync(file, 0o600)
  return serverKey(key)
}

export const sameText = (a: string, b: string): boolean => {
  const [left, right] = [Buffer.from(a), Buffer.from(b)]
  return left.length === right.length && timingSafeEqual(left, right)
}
