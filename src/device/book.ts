import * as z from 'zod/mini'
import type { EntryId } from '../record/ids.ts'
import { isCounted, type Counted, type Kept } from './kept.ts'
import type { News } from './news.ts'
import type { Store } from './store.ts'

/** A fold kept from the last time, with the place up to which it goes; of no use to another version of the projections. */
export interface Snapshot<S> {
  version: string
  /** It holds all entries with a time up to this one, ms since 1970. */
  upTo: number
  state: S
}

/** The record as the projections read it: what is here at the start, then only what is new. */
export interface Book {
  /** Every entry that counts, from a time on, in the order of display; plans of any age with them, as nothing can be read without one. */
  since(time: number): Promise<Counted[]>
  /** The newest entries before a time, newest first: for scrolling back. */
  before(time: number, limit: number): Promise<Counted[]>
  /** Entries that were kept and count nowhere: for the supervisor. */
  uncounted(): Promise<Kept[]>
  byIds(ids: readonly EntryId[]): Promise<Kept[]>
  /** Own entries, pulled ones and those of other tabs, and again each when the server has said more of it. */
  onEntries(listener: (news: Kept[]) => void): () => void
  snapshot<S>(name: string, version: string): Promise<Snapshot<S> | undefined>
  keepSnapshot<S>(name: string, snapshot: Snapshot<S>): Promise<void>
  /** Tells the listeners here and the other tabs. Called by what saves and pulls. */
  tell(news: Kept[]): void
  close(): void
}

const snapshotRow = z.strictObject({ version: z.string(), upTo: z.number(), state: z.unknown() })

export const createBook = (store: Store, news: News, onFault: (thrown: unknown) => void): Book => {
  const listeners = new Set<(news: Kept[]) => void>()
  const tellHere = (rows: Kept[]): void => {
    if (rows.length) for (const listener of listeners) listener(rows)
  }
  const stopListening = news.listen((ids) => {
    store.byIds(ids).then(tellHere).catch(onFault)
  })
  return {
    async since(time) {
      const [recent, plans] = await Promise.all([store.inTime({ from: time }), store.ofKind('plan', { to: time })])
      const seen = new Set(recent.map(({ entry }) => entry.id))
      return [...plans.filter(({ entry }) => !seen.has(entry.id)), ...recent].filter(isCounted)
    },
    before: async (time, limit) => (await store.inTime({ to: time, limit, newestFirst: true })).filter(isCounted),
    uncounted: async () => (await store.inTime({})).filter((row) => !isCounted(row)),
    byIds: (ids) => store.byIds(ids),
    onEntries(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    async snapshot<S>(name: string, version: string) {
      const row = snapshotRow.safeParse(await store.take('snapshots', name)).data
      return row?.version === version ? { version, upTo: row.upTo, state: row.state as S } : undefined
    },
    keepSnapshot: (name, snapshot) => store.keep('snapshots', name, snapshot),
    tell(rows) {
      tellHere(rows)
      news.tell(rows.map(({ entry }) => entry.id))
    },
    close() {
      stopListening()
      news.close()
    },
  }
}
