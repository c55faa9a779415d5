import type { PublicKey } from '../record/seal.ts'
import type { Hash } from '../record/ids.ts'
import type { Head } from '../record/kinds/sign-off.ts'

/**
 * What is signed or hashed between phone and server, as text, so that both sides build it in one place. Each begins with a mark of
 * what it is: no signature can serve for something else. The entry's own text is in the record; the request's in `auth.ts`.
 */

/** Signed by a new device's key to show that it holds it. */
export const enrolText = (plainCode: string): string => `enrol1|${plainCode}`

/** Hashed to the thumbprint of a key (the members of RFC 7638, in its order). */
export const thumbprintText = ({ crv, kty, x, y }: PublicKey): string => JSON.stringify({ crv, kty, x, y })

/** Six digits out of a key's thumbprint, to compare on two screens. */
export const digitsOf = (thumbprint: Hash): string => (Number.parseInt(thumbprint.slice(0, 12), 16) % 1_000_000).toString().padStart(6, '0')

/** Hashed to the `prev` of a device's first entry. */
export const seedText = (given: { dev: string; epoch: string; thumbprint: Hash }): string => `s1|${given.dev}|${given.epoch}|${given.thumbprint}`

/** Signed by the server in a receipt. */
export const receiptText = (given: { dev: string; epoch: string; seed: Hash }): string => `k1|${given.dev}|${given.epoch}|${given.seed}`

/** Signed by the server in a head. */
export const headText = ({ epoch, gseq, sh, time }: Omit<Head, 'sig'>): string => `h1|${epoch}|${gseq}|${sh}|${time}`

/** The server chain before any entry. */
export const chainStart = '0'.repeat(64) as Hash

/** Hashed to the server chain's value after an entry. */
export const linkText = (given: { before: Hash; gseq: number; h: Hash; recvAt: number }): string =>
  `${given.before}|${given.gseq}|${given.h}|${given.recvAt}`
