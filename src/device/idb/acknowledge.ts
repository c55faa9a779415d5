import type { EntryId } from '../../record/ids.ts'
import type { Kept } from '../kept.ts'
import type { Database } from './database.ts'
import { completed, strict } from './session.ts'

/** Takes out of the outbox what these acknowledgements name by id and number, and nothing else. Page and service worker share it. */
export const acknowledgeIn = async (database: Database, epoch: string, acks: readonly { id: EntryId; seq: number; gseq: number }[]): Promise<Kept[]> => {
  const transaction = database.transaction(['outbox', 'entries'], 'readwrite', strict)
  const outbox = transaction.objectStore('outbox')
  const entries = transaction.objectStore('entries')
  const found = await Promise.all(acks.map(async (ack) => ({ ack, place: await outbox.get(ack.seq), row: await entries.get(ack.id) })))
  const gone: Kept[] = []
  await completed(transaction, (ask) => {
    for (const { ack, place, row } of found) {
      if (place?.id !== ack.id || row?.entry.seq !== ack.seq) continue
      const acknowledged: Kept = { ...row, epoch, gseq: ack.gseq }
      gone.push(acknowledged)
      ask(entries.put(acknowledged))
      ask(outbox.delete(ack.seq))
    }
  })
  return gone
}
