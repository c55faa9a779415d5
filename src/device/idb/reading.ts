import type { Kept } from '../kept.ts'
import type { Order, ReadStore } from '../store.ts'
import { readable } from './rows.ts'
import type { Session } from './session.ts'

/** Sorts after every text and number, as arrays do in IndexedDB. */
const afterAll: never[] = []

export const idbReading = ({ use, unreadable }: Session): ReadStore => ({
  byIds: (ids) =>
    use('entries', async (database) => {
      const { store } = database.transaction('entries')
      const rows = await Promise.all(ids.map((id) => store.get(id)))
      return readable(rows.filter((row) => row !== undefined), unreadable)
    }),

  inTime: (order) =>
    use('entries', async (database) => {
      const index = database.transaction('entries').store.index('byTime')
      const range = IDBKeyRange.bound([order.from ?? -Infinity], [order.to ?? Infinity, afterAll])
      const rows = order.newestFirst ? await backwards(index.openCursor(range, 'prev'), order) : await index.getAll(range, order.limit)
      return readable(rows, unreadable)
    }),

  ofKind: (kind, order) =>
    use('entries', async (database) => {
      const index = database.transaction('entries').store.index('byKind')
      const range = IDBKeyRange.bound([kind, order.from ?? -Infinity], [kind, order.to ?? Infinity])
      const rows = order.newestFirst ? await backwards(index.openCursor(range, 'prev'), order) : await index.getAll(range, order.limit)
      return readable(rows, unreadable)
    }),

  count: () => use('entries', (database) => database.count('entries')),
})

interface Walk {
  value: Kept
  continue(): Promise<Walk | null>
}

/** A cursor, because `getAll` cannot go backwards in every browser; it costs some 11 ms for 500 rows of 100,000. */
const backwards = async (first: Promise<Walk | null>, { limit = Infinity }: Order): Promise<Kept[]> => {
  const rows: Kept[] = []
  for (let walk = await first; walk; walk = await walk.continue()) {
    rows.push(walk.value)
    if (rows.length >= limit) break
  }
  return rows
}
