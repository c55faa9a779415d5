import type { Sealed } from '../record/entry.ts'
import type { DeviceId } from '../record/ids.ts'
import { largestPush } from '../wire/largest.ts'
import { StoreFault } from './faults.ts'
import type { Kept } from './kept.ts'
import type { Store } from './store.ts'
import type { Waiting } from './idb/tables.ts'

export type Concern = 'none' | 'warning' | 'alarm'

const hour = 3_600_000
const warningAfterMs = 4 * hour
const alarmAfterMs = 24 * hour

/** How much it matters that the oldest entry has not been sent. Times are corrected ones, ms since 1970. */
export const concernFor = (oldestAt: number | undefined, now: number): Concern => {
  if (oldestAt === undefined) return 'none'
  const age = now - oldestAt
  return age >= alarmAfterMs ? 'alarm' : age >= warningAfterMs ? 'warning' : 'none'
}

/** What is around the entries of a push. */
const frameBytes = 512

/** A few more than are sent: evidence of a clone may share their numbers. */
const spare = 16

/** The next entries to send: from the oldest that waits, each linked to the one before, as many as one push may carry. */
export const nextBatch = async (store: Store, dev: DeviceId, oldest: Waiting, most: number = largestPush.entries): Promise<Sealed[]> => {
  const rows = await store.chain(dev, oldest.seq, most + spare)
  const batch = linked(rows, rows.find(({ entry }) => entry.id === oldest.id), most)
  if (!batch.length) throw new StoreFault('corrupt', `outbox/${oldest.seq}`)
  return batch
}

/** Those that follow on an entry of this phone; none where it is the newest. */
export const batchAfter = async (store: Store, dev: DeviceId, last: Sealed): Promise<Sealed[]> => {
  const rows = await store.chain(dev, last.entry.seq + 1, largestPush.entries + spare)
  return linked(rows, rows.find(({ entry }) => entry.seq === last.entry.seq + 1 && entry.prev === last.h), largestPush.entries)
}

const linked = (rows: readonly Kept[], first: Kept | undefined, most: number): Sealed[] => {
  const utf8 = new TextEncoder()
  const batch: Sealed[] = []
  let bytes = frameBytes
  let next = first
  while (next && batch.length < most) {
    const { entry, h, sig } = next
    const one = { entry, h, sig } as Sealed
    bytes += utf8.encode(JSON.stringify(one)).length + 1
    if (bytes > largestPush.bytes && batch.length) break
    batch.push(one)
    next = rows.find((row) => row.entry.seq === entry.seq + 1 && row.entry.prev === h)
  }
  return batch
}
