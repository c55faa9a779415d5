import type { EntryId } from '../record/ids.ts'
import type { Chained } from '../wire/chained.ts'
import type { Receipt } from '../wire/receipt.ts'
import type { Clock } from './clock.ts'
import { createCourier } from './courier.ts'
import { acknowledgeIn } from './idb/acknowledge.ts'
import { Connection } from './idb/connection.ts'
import { openDatabase } from './idb/database.ts'
import { webSigner } from './web-seal.ts'

export interface BackgroundParts {
  clock: Clock
  fetch(path: string, init: RequestInit): Promise<Response>
  /** Entries that the server now has. */
  onSent(ids: EntryId[]): void
  databaseName?: string
}

/** `later`: no network, or the server is busy. `page`: what stopped it is for the page, which knows what to do and can say it. */
export type BackgroundOutcome = 'done' | 'later' | 'page'

/** A modest push: what does not fit in it goes with the next. In UTF-8 a text is at most three times as long as its letters. */
const mostEntries = 100
const mostLetters = 300_000

/**
 * Sends what waits while no page is open. Only sends: pulling, a restored server, photos and everything odd are the page's. It is
 * written without the schemas, which would double the service worker: rows go out as they are kept, since the server checks every
 * hash and signature, and of the answer only acknowledgements are read, each of which must name an entry that waits.
 */
export const pushInBackground = async ({ clock, fetch, onSent, databaseName }: BackgroundParts): Promise<BackgroundOutcome> => {
  const quiet = { onBlocked: () => undefined, onLost: () => undefined }
  const connection = new Connection((lost) => openDatabase({ ...quiet, onLost: lost }, databaseName))
  try {
    for (;;) {
      const waiting = await connection.use('outbox', async (database) => {
        const transaction = database.transaction(['outbox', 'entries', 'singles'])
        const singles = transaction.objectStore('singles')
        const [receipt, keys, cursor, places] = await Promise.all([
          singles.get('receipt') as Promise<Receipt | undefined>,
          singles.get('keys') as Promise<CryptoKeyPair | undefined>,
          singles.get('cursor') as Promise<{ epoch: string } | undefined>,
          transaction.objectStore('outbox').getAll(null, mostEntries),
        ])
        const rows = await Promise.all(places.map(({ id }) => transaction.objectStore('entries').get(id)))
        return { receipt, keys, epoch: cursor?.epoch ?? receipt?.epoch, entries: consecutive(rows) }
      })
      const { receipt, keys, epoch, entries } = waiting
      if (!receipt || !keys || epoch === undefined || receipt.state !== 'enrolled') return 'page'
      if (!entries.length) return 'done'
      const { dev } = receipt
      const courier = createCourier({ fetch, clock, helloPath: '/api/v1/hello', caller: async () => ({ dev, signer: webSigner(keys.privateKey) }) })
      const body = new TextEncoder().encode(JSON.stringify({ v: 1, dev, epoch, entries }))
      const carried = await courier.carry({ method: 'POST', path: '/api/v1/push', isSigned: true, headers: { 'Content-Type': 'application/json' }, body })
      if (!carried.ok) return 'later'
      if (!carried.response.ok) return carried.response.status >= 500 || carried.response.status === 429 ? 'later' : 'page'
      const answer = (await carried.response.json()) as { acks?: unknown; error?: unknown }
      const gone = await connection.use('outbox', (database) => acknowledgeIn(database, acksIn(answer.acks)))
      onSent(gone)
      if (answer.error !== undefined || !gone.length) return 'page'
    }
  } catch (thrown) {
    // Whatever it is, the page meets it too, and says it.
    return thrown instanceof SyntaxError ? 'later' : 'page'
  } finally {
    await connection.close()
  }
}

const consecutive = (rows: readonly ({ entry: Chained; h: string; sig: string } | undefined)[]): { entry: Chained; h: string; sig: string }[] => {
  const batch: { entry: Chained; h: string; sig: string }[] = []
  let letters = 0
  for (const row of rows) {
    if (!row || (batch.length && row.entry.prev !== batch.at(-1)!.h)) break
    const one = { entry: row.entry, h: row.h, sig: row.sig }
    letters += JSON.stringify(one).length
    if (batch.length && letters > mostLetters) break
    batch.push(one)
  }
  return batch
}

const acksIn = (raw: unknown): { id: EntryId; seq: number }[] =>
  Array.isArray(raw)
    ? raw.filter((ack): ack is { id: EntryId; seq: number } => {
        const { id, seq } = (ack ?? {}) as Record<string, unknown>
        return typeof id === 'string' && Number.isSafeInteger(seq)
      })
    : []
