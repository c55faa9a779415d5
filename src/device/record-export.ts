import { enteredAtOf, spokenAtOf } from '../projections/line.ts'
import type { DeviceId, Hash } from '../record/ids.ts'
import type { PublicKey } from '../record/seal.ts'
import { recordFileText, type RecordFile } from '../wire/record-file.ts'
import { isCounted, type Kept } from './kept.ts'
import type { Store } from './store.ts'

export interface RecordAsked {
  laboratory: string
  timeZone: string
  /** Milliseconds since 1970: from ≤ t < to; undefined where it is open. */
  from?: number | undefined
  to?: number | undefined
  serverKey: PublicKey
  devices: readonly { dev: DeviceId; name: string; key: PublicKey; seed?: Hash | undefined }[]
}

const chainPage = 200

/**
 * Whether an entry belongs to a span, by what it says itself and not by when a server received it, so that the same entries are chosen on every phone:
 * entered in it, or speaking for an instant of it.
 */
const isIn = (row: Kept, from: number, to: number): boolean => {
  if (!isCounted(row)) return row.time >= from && row.time < to
  const entered = enteredAtOf(row.entry)
  const spoken = spokenAtOf(row.entry.data, entered)
  return (entered >= from && entered < to) || (spoken >= from && spoken < to)
}

/** The record of a span as text: of each device the unbroken run from its first entry of the span to its last. Without an entry there is no file. */
export const recordText = async (store: Store, { laboratory, timeZone, from, to, serverKey, devices }: RecordAsked): Promise<string | undefined> => {
  const runs = new Map<DeviceId, { first: number; last: number }>()
  // What speaks for the span may have been entered long after it, and never before it.
  for (const row of await store.inTime({})) {
    if (!isIn(row, from ?? Number.NEGATIVE_INFINITY, to ?? Number.POSITIVE_INFINITY)) continue
    const { dev, seq } = row.entry
    const run = runs.get(dev)
    runs.set(dev, run ? { first: Math.min(run.first, seq), last: Math.max(run.last, seq) } : { first: seq, last: seq })
  }
  const entries: RecordFile['entries'] = []
  for (const [dev, { first, last }] of [...runs].sort(([a], [b]) => (a < b ? -1 : 1))) {
    for (let at = first; at <= last; ) {
      const rows = await store.chain(dev, at, Math.min(chainPage, last - at + 1))
      const end = rows.at(-1)?.entry.seq
      if (end === undefined) break
      for (const { entry, h, sig, status } of rows) if (entry.seq <= last) entries.push({ entry, h, sig, ...(status === 'valid' ? {} : { uncounted: status }) })
      at = end + 1
    }
  }
  if (entries.length === 0) return undefined
  const used = new Set(entries.map(({ entry }) => entry.dev))
  return recordFileText({
    format: 'bathkeeper-record', v: 1, laboratory, timeZone, span: { from: from ?? null, to: to ?? null }, server: { key: serverKey },
    devices: devices.filter(({ dev }) => used.has(dev)).map(({ dev, name, key, seed }) => ({ dev, name, key, ...(seed ? { seed } : {}) })).sort((a, b) => (a.dev < b.dev ? -1 : 1)),
    entries,
  })
}
