import type { EntryId } from '../../record/ids.ts'
import type { Database } from './database.ts'
import { completed, soon } from './session.ts'

/**
 * Takes out of the outbox what these acknowledgements name by id and number, and nothing else; the entries stay as they are until the server's word
 * on them is pulled. Page and service worker share it.
 */
export const acknowledgeIn = async (database: Database, acks: readonly { id: EntryId; seq: number }[]): Promise<EntryId[]> => {
  if (!acks.length) return []
  const named = new Map(acks.map(({ seq, id }) => [seq, id]))
  const range = IDBKeyRange.bound(Math.min(...named.keys()), Math.max(...named.keys()))
  const transaction = database.transaction('outbox', 'readwrite', soon)
  const places = await transaction.store.getAll(range)
  const gone = places.filter(({ seq, id }) => named.get(seq) === id)
  await completed(transaction, (ask) => {
    if (gone.length === places.length) ask(transaction.store.delete(range))
    else for (const { seq } of gone) ask(transaction.store.delete(seq))
  })
  return gone.map(({ id }) => id)
}
