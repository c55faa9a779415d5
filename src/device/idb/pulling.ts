import type { Kept } from '../kept.ts'
import { displacedBy, mergePulled } from '../merge.ts'
import { isAt, isPast } from '../pages.ts'
import type { PullStore } from '../store.ts'
import { readable, readCursor, readHead } from './rows.ts'
import { completed, soon, strict, type Session } from './session.ts'

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
      const byChain = entries.index('byChain')
      const here = await Promise.all(page.entries.map(({ entry }) => entries.get(entry.id)))
      const sameNumber = await Promise.all(page.entries.map(({ entry }) => byChain.getAll([entry.dev, entry.seq])))
      await completed(transaction, (ask) => {
        page.entries.forEach((pulled, index) => {
          for (const row of displacedBy(pulled, sameNumber[index] ?? [], head)) {
            changed.push(row)
            ask(entries.put(row))
          }
          const merged = mergePulled(here[index], pulled, head)
          if (!merged) return
          changed.push(merged.row)
          ask(entries.put(merged.row))
          if (!merged.head) return
          head = merged.head
          regained++
        })
        if (regained > 0) ask(singles.put(head, 'head'))
        for (const device of page.devices) ask(devices.put(device, device.dev))
        ask(singles.put(page.next, 'cursor'))
      })
      return { applied: true, changed, regained }
    }),
})
