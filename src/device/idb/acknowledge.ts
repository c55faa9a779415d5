import type { EntryId } from '../../record/ids.ts'
import type { Kept } from '../kept.ts'
import type { Database } from './database.ts'
import { completed, soon } from './session.ts'

/** Takes out of the outbox what these acknowledgements name by id and number, and nothing else. Page and service worker share it. */
export const acknowledgeIn = async (database: Database, epoch: string, acks: readonly { id: EntryId; seq: number; gseq: number }[]): Promise<Kept[]> => {
  const transaction = database.transaction(['outbox', 'entries'], 'readwrite', soon)
  const outbox = transaction.objectStore('outbox')
  const entries = transaction.objectStore('entries')
  const named = new Map(acks.map((ack) => [ack.seq, ack]))
  const [first, last] = [Math.min(...named.keys()), Math.max(...named.keys())]
  // Acknowledgements come in the order of the chain, so places and entries are read in one go each, not one by one.
  const places = named.size ? await outbox.getAll(IDBKeyRange.bound(first, last)) : []
  const own = places[0] && (await entries.get(places[0].id))
  const rows = own ? await entries.index('byChain').getAll(IDBKeyRange.bound([own.entry.dev, first], [own.entry.dev, last])) : []
  const rowOf = new Map(rows.map((row) => [row.entry.id, row]))
  const gone: Kept[] = []
  await completed(transaction, (ask) => {
    for (const { seq, id } of places) {
      const [ack, row] = [named.get(seq), rowOf.get(id)]
      if (ack?.id !== id || row?.entry.seq !== seq) continue
      const acknowledged: Kept = { ...row, epoch, gseq: ack.gseq }
      gone.push(acknowledged)
      ask(entries.put(acknowledged))
      ask(outbox.delete(seq))
    }
  })
  return gone
}
