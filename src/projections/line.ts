import type { PersonId } from '../plan/ids.ts'
import type { Envelope } from '../record/entry.ts'
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

interface LineBase {
  id: EntryId
  dev: DeviceId
  seq: number
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

export const byTime = (a: Line, b: Line): number =>
  a.time - b.time || (a.dev < b.dev ? -1 : a.dev > b.dev ? 1 : 0) || a.seq - b.seq
