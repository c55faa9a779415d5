import { unwrap, type IDBPObjectStore } from 'idb'
import type { DeviceId, EntryId } from '../../record/ids.ts'
import type { Kept } from '../kept.ts'
import { displacedBy, mergePulled } from '../merge.ts'
import { largestPull } from '../../wire/largest.ts'
import { isAt, isPast } from '../pages.ts'
import type { PullStore } from '../store.ts'
import { readable, readCursor, readHead } from './rows.ts'
import { completed, soon, strict, type Session } from './session.ts'
import type { Tables } from './tables.ts'

export const idbPulling = ({ use, save, unreadable }: Session): PullStore => ({
  cursor: () => use('cursor', async (database) => readCursor(await database.get('singles', 'cursor'))),

  startCursor: (start) =>
    save('cursor', async (database) => {
      const transaction = database.transaction('singles', 'readwrite', strict)
      await completed(transaction, (ask) => ask(transaction.store.put(start, 'cursor')))
    }),

  apply: (page) =>
    save('pull', async (database) => {
      const transaction = database.transaction(['entries', 'singles', 'devices'], 'readwrite', soon)
      const singles = transaction.objectStore('singles')
      const entries = transaction.objectStore('entries')
      const devices = transaction.objectStore('devices')
      const cursor = readCursor(await singles.get('cursor'))
      // Applied already, and the answer was lost with the connection: what it changed is told again, so that the screens have it.
      if (isPast(page, cursor)) {
        const rows = await Promise.all(page.entries.map(({ entry }) => entries.get(entry.id)))
        return { applied: true, changed: readable(rows.filter((row) => row !== undefined), unreadable), regained: 0 }
      }
      if (!isAt(page, cursor)) return { applied: false, changed: [], regained: 0 }
      let head = readHead(await singles.get('head'))
      let regained = 0
      const changed: Kept[] = []
      const here = await rowsHere(entries, page.entries)
      const byId = new Map(here.map((row) => [row.entry.id, row]))
      // Whether all of it was written is what the transaction says: no row of five hundred is listened to by itself.
      const bare = unwrap(entries)
      const put = (row: Kept): void => {
        changed.push(row)
        byId.set(row.entry.id, row)
        bare.put(row)
      }
      await completed(transaction, (ask) => {
        for (const pulled of page.entries) {
          for (const row of displacedBy(pulled, here.filter(({ entry }) => entry.dev === pulled.entry.dev && entry.seq === pulled.entry.seq), head)) put(row)
          const merged = mergePulled(byId.get(pulled.entry.id), pulled, head)
          if (!merged) continue
          put(merged.row)
          if (!merged.head) continue
          head = merged.head
          regained++
        }
        if (regained > 0) ask(singles.put(head, 'head'))
        for (const device of page.devices) ask(devices.put(device, device.dev))
        ask(singles.put(page.next, 'cursor'))
      })
      return { applied: true, changed, regained }
    }),
})

type Entries = IDBPObjectStore<Tables, ('entries' | 'singles' | 'devices')[], 'entries', 'readwrite'>

const mostKeys = 2 * largestPull

/**
 * The rows that bear an id or a number of this page. A page is of one time, and of consecutive numbers of each device, so that a range or two show
 * that there are none; where a range of ids holds much else, each is asked for by itself.
 */
const rowsHere = async (entries: Entries, page: readonly Kept[]): Promise<Kept[]> => {
  if (!page.length) return []
  const ids = page.map(({ entry }) => entry.id).sort()
  const numbers = new Map<DeviceId, { first: number; last: number }>()
  for (const { entry: { dev, seq } } of page) {
    const { first, last } = numbers.get(dev) ?? { first: seq, last: seq }
    numbers.set(dev, { first: Math.min(first, seq), last: Math.max(last, seq) })
  }
  const [near, ...numbered] = await Promise.all([
    entries.getAllKeys(IDBKeyRange.bound(ids[0], ids.at(-1)), mostKeys),
    ...[...numbers].map(([dev, { first, last }]) => entries.index('byChain').getAllKeys(IDBKeyRange.bound([dev, first], [dev, last]))),
  ])
  const wanted = new Set(ids)
  const found = near!.length < mostKeys ? near!.filter((id) => wanted.has(id)) : ids
  const rows = await Promise.all([...new Set<EntryId>([...found, ...numbered.flat()])].map((id) => entries.get(id)))
  return rows.filter((row) => row !== undefined)
}
