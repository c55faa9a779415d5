import { createClock } from '../../src/device/clock.ts'
import type { Kept } from '../../src/device/kept.ts'
import { createIdbStore } from '../../src/device/idb-store.ts'
import { openDatabase } from '../../src/device/idb/database.ts'
import { webLocks } from '../../src/device/locks.ts'
import { createNews } from '../../src/device/news.ts'
import { openPhone, type Phone } from '../../src/device/open-phone.ts'
import { uuid7 } from '../../src/device/uuid7.ts'
import type { Envelope } from '../../src/record/entry.ts'
import { seal } from '../../src/record/seal.ts'
import { countFetch, type Traffic } from './counted-fetch.ts'

export interface Synced extends Traffic {
  milliseconds: number
  entries: number
}

/** The phone's own code in a page without screens. */
export interface PhoneBench {
  /** Gives the digits that a supervisor confirms. */
  enrol(name: string, code: string, firstSupervisor?: { name: string; passphrase: string }): Promise<{ digits: string; dev: string; person?: string | undefined }>
  confirm(): Promise<void>
  /** So many signed entries, all waiting to be sent, as weeks without a network leave them. */
  queue(count: number): Promise<void>
  /** Until nothing waits and all that the server has is here. */
  sync(): Promise<{ push: Synced; pull: Synced }>
  /** The phone that the app has kept in this browser. */
  openKept(): void
  /** From the call to the durable save, one by one with a pause between. */
  saves(count: number, data: Record<string, unknown>): Promise<number[]>
}

const counted = countFetch()
const clock = createClock()
const randomBytes = (count: number): Uint8Array<ArrayBuffer> => crypto.getRandomValues(new Uint8Array(count))
const fail = (thrown: unknown): void => console.error(thrown)
const never = (): (() => void) => () => undefined
let phone: Phone
let database: string

let onGone: (count: number) => void = () => undefined

const open = (name: string): void => {
  database = name
  const store = createIdbStore({ onBlocked: () => fail('blocked'), onLost: () => fail('lost'), onUnreadable: fail }, name)
  phone = openPhone({
    store: {
      ...store,
      acknowledge: async (acks) => {
        const gone = await store.acknowledge(acks)
        onGone(gone.length)
        return gone
      },
    },
    // Nothing goes by itself: what is measured is asked for.
    clock, locks: webLocks(), news: createNews(), fetch: (path, init) => fetch(path, init), randomBytes, chance: Math.random, after: never,
    about: () => Promise.resolve({ persisted: true, installed: false, app: 'bench' }), onFault: fail,
  })
}

const bench: PhoneBench = {
  enrol: async (name, code, firstSupervisor) => {
    open(name)
    const enrolled = await phone.enrolment.enrol({ code, name: 'A phone of the bench', ...(firstSupervisor ? { firstSupervisor } : {}) })
    if (!enrolled.ok) throw new Error(JSON.stringify(enrolled.problem))
    const { digits, dev, person } = enrolled.receipt
    return { digits, dev, person }
  },
  confirm: async () => {
    const answer = await phone.enrolment.isConfirmed()
    if (!answer.ok || !answer.confirmed) throw new Error('not confirmed')
  },
  queue: async (count) => {
    const { receipt, signer } = (await phone.identity())!
    let { seq, h } = (await phone.store.head())!
    const rows: Kept[] = []
    while (rows.length < count) {
      const at = clock.wall() - (count - rows.length) * 1000
      const entry: Envelope = {
        v: 1, id: uuid7(at, randomBytes(10)), dev: receipt.dev, seq: ++seq, prev: h, kind: 'note', at: new Date(at).toISOString(), tz: 'Europe/Lisbon', sess: clock.session, mono: rows.length,
        skew: { ms: 0, within: 20 }, op: null, data: { text: `The replenisher of machine ${rows.length % 3} was refilled to the mark`, about: 'general', machine: 'neg-1', station: 'neg-1-dev' }, blobs: [],
      }
      const sealed = await seal(entry, signer)
      h = sealed.h
      rows.push({ status: 'valid', ...sealed, time: at })
    }
    const idb = await openDatabase({ onBlocked: () => undefined, onLost: () => undefined }, database)
    const transaction = idb.transaction(['entries', 'outbox', 'singles'], 'readwrite')
    for (const row of rows) {
      void transaction.objectStore('entries').put(row)
      void transaction.objectStore('outbox').put({ seq: row.entry.seq, id: row.entry.id, savedAt: row.time })
    }
    void transaction.objectStore('singles').put({ dev: receipt.dev, seq, h }, 'head')
    await transaction.done
    idb.close()
  },
  sync: async () => {
    const before = await phone.store.count()
    const { count: waiting } = await phone.store.waiting()
    counted.take()
    const began = performance.now()
    let sentAt = waiting ? Number.NaN : began
    let push: Traffic = waiting ? { requests: 0, bytesUp: 0, bytesDown: 0 } : counted.take()
    let left = waiting
    onGone = (count) => {
      left -= count
      if (left > 0) return
      sentAt = performance.now()
      push = counted.take()
    }
    const { problem } = await phone.sender.sendNow()
    if (problem) throw new Error(JSON.stringify(problem))
    const pulled = waiting || (await phone.store.count()) - before
    return { push: { milliseconds: sentAt - began, entries: waiting, ...push }, pull: { milliseconds: performance.now() - sentAt, entries: pulled, ...counted.take() } }
  },
  openKept: () => open('bathkeeper'),
  saves: async (count, data) => {
    const times: number[] = []
    for (let index = 0; index < count; index++) {
      await new Promise((done) => setTimeout(done, 60))
      const began = performance.now()
      const saved = await phone.append('reading', data as never, { person: null })
      times.push(performance.now() - began)
      if (!saved.ok) throw new Error(JSON.stringify(saved.refusal))
    }
    return times
  },
}
Object.assign(globalThis, { phoneBench: bench })
