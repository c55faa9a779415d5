import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { createAppend, type Append } from '../../src/device/append.ts'
import type { Clock } from '../../src/device/clock.ts'
import { createIdbStore } from '../../src/device/idb-store.ts'
import type { Counted } from '../../src/device/kept.ts'
import { noLocks, type Locks } from '../../src/device/locks.ts'
import type { Store } from '../../src/device/store.ts'
import { createKeyPair, publicHalf, webHasher, webSigner } from '../../src/device/web-seal.ts'
import type { PersonId } from '../../src/plan/ids.ts'
import { deviceId, hash } from '../../src/record/ids.ts'
import type { DataOf } from '../../src/record/kinds.ts'
import type { PublicKey, Signer } from '../../src/record/seal.ts'
import type { Receipt } from '../../src/wire/receipt.ts'
import { digitsOf, seedText, thumbprintText } from '../../src/wire/signed-texts.ts'

/** A clock that a test turns by hand. */
export class HandClock implements Clock {
  constructor(
    public now = Date.UTC(2026, 0, 12, 5, 40),
    public running = 0,
    readonly session = '00c0ffee',
  ) {}
  wall = (): number => this.now
  monotonic = (): number => this.running
  zone = (): string => 'Europe/Paris'
  offsetMinutes = (): number => 60
  passes(milliseconds: number): void {
    this.now += milliseconds
    this.running += milliseconds
  }
}

/** Puts an empty IndexedDB in place of the browser's. */
export const freshIndexedDb = (): void => {
  globalThis.indexedDB = new IDBFactory()
}

export interface QuietEvents {
  blocked: number
  lost: number
  unreadable: string[]
}

export const idbStore = (name = 'test', seen: QuietEvents = { blocked: 0, lost: 0, unreadable: [] }): Store =>
  createIdbStore({ onBlocked: () => void seen.blocked++, onLost: () => void seen.lost++, onUnreadable: (where) => void seen.unreadable.push(where) }, name)

/** A server's key and the receipts it gives, for tests that need no server. */
export const someServer = async (): Promise<{ key: PublicKey; signer: Signer }> => {
  const pair = await createKeyPair()
  return { key: await publicHalf(pair), signer: webSigner(pair.privateKey) }
}

export const enrolled = async (store: Store, dev = '00000000000000a1', epoch = 'e1'): Promise<{ receipt: Receipt; keys: CryptoKeyPair }> => {
  const keys = await createKeyPair()
  const server = await someServer()
  const thumbprint = await webHasher.sha256(thumbprintText(await publicHalf(keys)))
  const seed = await webHasher.sha256(seedText({ dev, epoch, thumbprint }))
  const receipt: Receipt = {
    v: 1, dev: deviceId.parse(dev), epoch, serverKey: { ...server.key }, seed: hash.parse(seed), digits: digitsOf(thumbprint), state: 'enrolled', sig: 'x',
  }
  await store.begin({ head: { dev: receipt.dev, seq: 0, h: receipt.seed }, expected: undefined, receipt, keys })
  return { receipt, keys }
}

export const operator = 'ida' as PersonId

export const appending = (store: Store, given: { clock?: Clock; locks?: Locks; onSaved?: (saved: Counted) => void } = {}): Append =>
  createAppend({
    store,
    clock: given.clock ?? new HandClock(),
    locks: given.locks ?? noLocks,
    randomBytes: (count) => crypto.getRandomValues(new Uint8Array(count)),
    onSaved: given.onSaved ?? (() => undefined),
  })

export const note = (text: string): DataOf<'note'> => ({ text, about: 'general' })

export const saved = async (append: Append, text: string): Promise<Counted> => {
  const outcome = await append('note', note(text), { person: operator })
  if (!outcome.ok) throw new Error(outcome.refusal.code)
  return outcome.saved
}
