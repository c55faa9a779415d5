import type { PersonId } from '../plan/ids.ts'
import type { Entry, Envelope } from '../record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'

/** An entry as the store gives it. `gseq` and `recvAt` are there once the server has it. */
export interface Arrived {
  entry: Envelope
  h: Hash
  gseq?: number | undefined
  recvAt?: number | undefined
  status?: 'valid' | 'invalid' | 'opaque' | 'quarantined' | undefined
}

/** Where a line stands in the log. */
export interface LineKey {
  time: number
  dev: DeviceId
  seq: number
  id: EntryId
}

interface LineBase extends LineKey {
  h: Hash
  person: PersonId | null
  /** Milliseconds since 1970 for which the entry speaks: noted at the tank if it says so, else entered; corrected by the device's clock error. */
  time: number
  enteredAt: number
  recvAt?: number | undefined
  /** Entries that changed the data, oldest first. */
  amendedBy: EntryId[]
  withdrawnBy?: EntryId | undefined
}

/** One line of the laboratory's log: an entry with its amendments applied. */
export type LineOf<K extends Kind> = LineBase & { kind: K; data: DataOf<K> }
export type Line = { [K in Kind]: LineOf<K> }[Kind]

const text = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/**
 * Order of the log: by time, and where two times are the same by device and number, so that it is the same everywhere. The id decides
 * between two entries of a cloned phone, which bear the same number.
 */
export const byTime = (a: LineKey, b: LineKey): number => a.time - b.time || text(a.dev, b.dev) || a.seq - b.seq || text(a.id, b.id)

/** A clock further ahead than this of the server that received the entry is wrong; nearer, and it is only not well measured. */
const aheadMilliseconds = 120_000

/** When an entry was entered: wall clock plus the clock error then known, and never long after the server received it. */
export const enteredAtOf = (entry: Pick<Envelope, 'at' | 'skew'>, recvAt?: number): number => {
  const at = Date.parse(entry.at) + (entry.skew?.ms ?? 0)
  return recvAt !== undefined && at > recvAt + aheadMilliseconds ? recvAt : at
}

/** A reading keyed later speaks for the minute in which it was noted, but never for the future. */
export const spokenAtOf = (data: object, enteredAt: number): number => {
  const notedAt = 'notedAt' in data && typeof data.notedAt === 'string' ? Date.parse(data.notedAt) : Number.NaN
  return Number.isFinite(notedAt) && notedAt <= enteredAt ? notedAt : enteredAt
}

/** Where an entry would stand before any change to it. */
export const keyOf = (entry: Envelope, recvAt?: number): LineKey => ({
  time: spokenAtOf(entry.data, enteredAtOf(entry, recvAt)),
  dev: entry.dev,
  seq: entry.seq,
  id: entry.id,
})

export const lineOf = (entry: Entry, h: Hash, recvAt: number | undefined): Line => {
  const enteredAt = enteredAtOf(entry, recvAt)
  return {
    id: entry.id,
    dev: entry.dev,
    seq: entry.seq,
    h,
    person: entry.op as PersonId | null,
    time: spokenAtOf(entry.data, enteredAt),
    enteredAt,
    recvAt,
    amendedBy: [],
    kind: entry.kind,
    data: entry.data,
  } as Line
}
