import type { Sealed } from '../record/entry.ts'
import type { DeviceId } from '../record/ids.ts'
import { largestPush } from '../wire/largest.ts'
import { StoreFault } from './faults.ts'
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

/** The next entries to send: from the oldest that waits, each linked to the one before, as many as one push may carry. */
export const nextBatch = async (store: Store, dev: DeviceId, oldest: Waiting, most: number = largestPush.entries): Promise<Sealed[]> => {
  // A few more than are sent: evidence of a clone may share their numbers.
  const rows = await store.chain(dev, oldest.seq, most + 16)
  const batch: Sealed[] = []
  let bytes = frameBytes
  let next = rows.find(({ entry }) => entry.id === oldest.id)
  while (next && batch.length < most) {
    const { entry, h, sig } = next
    const one = { entry, h, sig } as Sealed
    bytes += new TextEncoder().encode(JSON.stringify(one)).length + 1
    if (bytes > largestPush.bytes && batch.length) break
    batch.push(one)
    next = rows.find((row) => row.entry.seq === entry.seq + 1 && row.entry.prev === h)
  }
  if (!batch.length) throw new StoreFault('corrupt', `outbox/${oldest.seq}`)
  return batch
}
