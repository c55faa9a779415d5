import { setApart } from '../merge.ts'
import { ownChain, sameHead } from '../own-chain.ts'
import type { ChainHead, ChainStore } from '../store.ts'
import { acknowledgeIn } from './acknowledge.ts'
import { readableBeginning, readHead } from './rows.ts'
import { completed, strict, type Session } from './session.ts'
import type { Waiting } from './tables.ts'

const lastSeq = Number.MAX_SAFE_INTEGER

export const idbChain = ({ use, save }: Session): ChainStore => ({
  head: () => use('head', async (database) => readHead(await database.get('singles', 'head'))),

  begin: ({ head, expected, receipt, keys, former, forget }) =>
    save('head', async (database) => {
      const transaction = database.transaction([...database.objectStoreNames], 'readwrite', strict)
      const singles = transaction.objectStore('singles')
      const current = readHead(await singles.get('head'))
      if (!sameHead(current, expected) && !sameHead(current, head)) return 'moved'
      const emptied = forget ? [...database.objectStoreNames] : (['outbox'] as const)
      await completed(transaction, (ask) => {
        for (const name of emptied) ask(transaction.objectStore(name).clear())
        ask(singles.put(head, 'head'))
        ask(singles.put(receipt, 'receipt'))
        ask(singles.put(keys, 'keys'))
        if (former) ask(transaction.objectStore('exports').put(former.row, former.dev))
      })
      return 'begun'
    }),

  append: (entry, expected, blobs) =>
    save('append', async (database) => {
      const transaction = database.transaction(['entries', 'outbox', 'singles', 'blobs'], 'readwrite', strict)
      const singles = transaction.objectStore('singles')
      const head = readHead(await singles.get('head'))
      if (!head || !sameHead(head, expected)) {
        // The connection may have been lost after the commit and before its answer: the entry is there already, and another may follow it.
        const there = await transaction.objectStore('entries').get(entry.entry.id)
        return there?.h === entry.h ? 'saved' : 'moved'
      }
      const place: Waiting = { seq: entry.entry.seq, id: entry.entry.id, savedAt: entry.time }
      const newHead: ChainHead = { dev: entry.entry.dev, seq: entry.entry.seq, h: entry.h }
      await completed(transaction, (ask) => {
        ask(transaction.objectStore('entries').add(entry))
        ask(transaction.objectStore('outbox').add(place))
        for (const blob of blobs) ask(transaction.objectStore('blobs').put(blob))
        ask(singles.put(newHead, 'head'))
      })
      return 'saved'
    }),

  waiting: () =>
    use('outbox', async (database) => {
      const { store } = database.transaction('outbox')
      const [count, [oldest]] = await Promise.all([store.count(), store.getAll(null, 1)])
      return { count, ...(oldest ? { oldest } : {}) }
    }),

  chain: (dev, from, limit) =>
    use('entries', async (database) => {
      const rows = await database.getAllFromIndex('entries', 'byChain', IDBKeyRange.bound([dev, from], [dev, lastSeq]), limit)
      return readableBeginning(rows)
    }),

  acknowledge: (acks) => save('outbox', (database) => acknowledgeIn(database, acks)),

  setApart: (ids, epoch) =>
    save('entries', async (database) => {
      const transaction = database.transaction('entries', 'readwrite', strict)
      const rows = (await Promise.all(ids.map((id) => transaction.store.get(id)))).map((row) => setApart(row, epoch)).filter((row) => row !== undefined)
      await completed(transaction, (ask) => {
        for (const row of rows) ask(transaction.store.put(row))
      })
      return rows
    }),

  requeue: (from) =>
    save('outbox', async (database) => {
      const transaction = database.transaction(['outbox', 'entries', 'singles'], 'readwrite', strict)
      const outbox = transaction.objectStore('outbox')
      const head = readHead(await transaction.objectStore('singles').get('head'))
      if (!head) return 0
      const own = IDBKeyRange.bound([head.dev, from], [head.dev, lastSeq])
      const [rows, already] = await Promise.all([transaction.objectStore('entries').index('byChain').getAll(own), outbox.getAllKeys()])
      const waiting = new Set(already)
      const back = ownChain(rows, head.h).filter(({ entry }) => !waiting.has(entry.seq))
      await completed(transaction, (ask) => {
        for (const { entry, time } of back) ask(outbox.put({ seq: entry.seq, id: entry.id, savedAt: time }))
      })
      return back.length
    }),
})
