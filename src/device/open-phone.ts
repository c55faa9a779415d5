import { createAppend, type Append } from './append.ts'
import { createBook, type Book } from './book.ts'
import type { Clock } from './clock.ts'
import type { CourierParts } from './courier.ts'
import type { Enrolment } from './enrolment.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import { readIdentity, type Identity } from './identity.ts'
import { doorLater, enrolmentLater, exchangeLater, pinsLater } from './later.ts'
import type { Locks } from './locks.ts'
import type { News } from './news.ts'
import type { Pins } from './pins.ts'
import { createSender, type Sender } from './sender.ts'
import type { Door } from './server-door.ts'
import { skewNow, parseSkew, type Skew } from './skew.ts'
import type { Store } from './store.ts'
import { createWebVerifier } from './web-seal.ts'

/** Everything this room takes from outside. */
export interface PhonePorts {
  store: Store
  clock: Clock
  locks: Locks
  news: News
  fetch: CourierParts['fetch']
  randomBytes(count: number): Uint8Array<ArrayBuffer>
  chance(): number
  after(milliseconds: number, work: () => void): () => void
  about: ExchangeParts['about']
  /** After each durable save: the page asks for a background send. */
  onSaved?(): void
  onFault(thrown: unknown): void
}

/** The phone's record and its way to the server, put together. */
export interface Phone {
  store: Store
  door: Door
  append: Append
  book: Book
  sender: Sender
  enrolment: Enrolment
  pins: Pins
  identity(): Promise<Identity | undefined>
  /** The clock error as it would be written on an entry now. */
  skew(): Promise<Skew>
  close(): Promise<void>
}

export const openPhone = (ports: PhonePorts): Phone => {
  const { store, clock, locks, news, randomBytes, onFault } = ports
  const book = createBook(store, news, onFault)
  const courier: Omit<CourierParts, 'helloPath'> = {
    fetch: ports.fetch,
    clock,
    caller: async () => {
      const identity = await readIdentity(store)
      return identity && { dev: identity.receipt.dev, signer: identity.signer }
    },
  }
  const door = doorLater(courier, store, onFault)
  const verifier = createWebVerifier()
  const parts: ExchangeParts = {
    store, door, clock, verifier, onEntries: (changed) => book.tell(changed), onToCome: (toCome) => sender.tell({ toCome }), about: ports.about,
    onSent(ids) {
      news.tell(ids)
      sender.tell({ sent: ids.length })
    },
  }
  const sender = createSender({ store, clock, locks, exchange: exchangeLater(parts), after: ports.after, chance: ports.chance, onFault })
  const append = createAppend({
    store, clock, locks, randomBytes,
    onSaved(saved) {
      book.tell([saved])
      sender.nudge('saved')
      ports.onSaved?.()
    },
  })
  // Another tab or the service worker has saved or sent.
  const stopCounting = news.listen(() => void sender.refresh().catch(onFault))
  return {
    store, door, append, book, sender,
    enrolment: enrolmentLater({ store, door, clock, verifier, locks }),
    pins: pinsLater(store, clock, randomBytes),
    identity: () => readIdentity(store),
    skew: async () => skewNow(clock, parseSkew(await store.take('singles', 'skew'))),
    async close() {
      sender.stop()
      stopCounting()
      book.close()
      await store.close()
    },
  }
}
