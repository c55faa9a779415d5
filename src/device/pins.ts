import * as z from 'zod/mini'
import type { PersonId } from '../plan/ids.ts'
import type { Clock } from './clock.ts'
import type { ShelfStore } from './store.ts'
import { base64url, fromBase64url } from './web-seal.ts'

/**
 * A PIN says who has the shared phone in hand; it is attribution, not a secret: four digits fall in some minutes to whoever copies
 * the verifier. That is why a supervisor signs with a passphrase that the server checks.
 */
const rounds = 600_000
const freeTries = 5
const firstDelayMs = 30_000
const longestDelayMs = 900_000

const row = z.strictObject({ salt: z.string(), verifier: z.string(), wrong: z.int(), lockedUntil: z.number() })

export type PinChecked =
  | { code: 'right' }
  | { code: 'wrong'; triesLeft: number }
  /** Too many wrong ones; until then (ms since 1970, this phone's clock) even the right one is not looked at. */
  | { code: 'locked'; until: number }
  | { code: 'none' }

export interface Pins {
  has(person: PersonId): Promise<boolean>
  /** Four digits or more. */
  set(person: PersonId, pin: string): Promise<{ ok: true } | { ok: false; code: 'shape' }>
  check(person: PersonId, pin: string): Promise<PinChecked>
  remove(person: PersonId): Promise<void>
}

const shape = /^\d{4,12}$/

export const createPins = (store: ShelfStore, clock: Clock, randomBytes: (count: number) => Uint8Array<ArrayBuffer>, iterations: number = rounds): Pins => {
  const derive = async (pin: string, salt: Uint8Array<ArrayBuffer>): Promise<string> => {
    const key = await crypto.subtle.importKey('raw', new TextEncoder().encode(pin), 'PBKDF2', false, ['deriveBits'])
    return base64url(new Uint8Array(await crypto.subtle.deriveBits({ name: 'PBKDF2', hash: 'SHA-256', salt, iterations }, key, 256)))
  }
  return {
    has: async (person) => row.safeParse(await store.take('pins', person)).success,
    remove: (person) => store.remove('pins', person),
    async set(person, pin) {
      if (!shape.test(pin)) return { ok: false, code: 'shape' }
      const salt = randomBytes(16)
      await store.keep('pins', person, { salt: base64url(salt), verifier: await derive(pin, salt), wrong: 0, lockedUntil: 0 })
      return { ok: true }
    },
    async check(person, pin) {
      const known = row.safeParse(await store.take('pins', person)).data
      if (!known) return { code: 'none' }
      const now = clock.wall()
      // A clock set back must not lock a person out for longer than the longest delay.
      if (known.lockedUntil > now && known.lockedUntil - now <= longestDelayMs) return { code: 'locked', until: known.lockedUntil }
      const isRight = (await derive(pin, fromBase64url(known.salt))) === known.verifier
      // Counted in the store before it is told, so that closing the page gives no further tries.
      const after = await store.revise('pins', person, (raw) => {
        const current = row.parse(raw)
        if (isRight) return { ...current, wrong: 0, lockedUntil: 0 }
        const wrong = current.wrong + 1
        const beyond = wrong - freeTries
        const delay = beyond < 0 ? 0 : Math.min(longestDelayMs, firstDelayMs * 2 ** beyond)
        return { ...current, wrong, lockedUntil: delay ? now + delay : 0 }
      })
      if (isRight) return { code: 'right' }
      return after.lockedUntil ? { code: 'locked', until: after.lockedUntil } : { code: 'wrong', triesLeft: freeTries - after.wrong }
    },
  }
}
