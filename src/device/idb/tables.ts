import type { DBSchema } from 'idb'
import type { DeviceId, EntryId, Hash } from '../../record/ids.ts'
import type { Kept } from '../kept.ts'

/** A place in the line of what the server has not acknowledged. The entry itself is in `entries`. */
export interface Waiting {
  seq: number
  id: EntryId
  /** When it was saved, ms since 1970, corrected by the clock error then known. */
  savedAt: number
}

/** A photo by the SHA-256 of its bytes. Those that the server has may be dropped when room is short. */
export interface KeptBlob {
  sha256: Hash
  bytes: ArrayBuffer
  /** The entry that it belongs to, which must reach the server first. */
  of: EntryId
  sent: 0 | 1
}

/** Small things by name. Who puts something on a shelf parses it when taking it down. */
export const shelves = ['singles', 'drafts', 'pins', 'snapshots', 'settings', 'exports', 'devices'] as const
export type ShelfName = (typeof shelves)[number]

type Shelves = { [S in ShelfName]: { key: string; value: unknown } }

export interface Tables extends DBSchema, Shelves {
  entries: {
    key: EntryId
    value: Kept
    indexes: {
      /** Not unique: a cloned device may have given two entries one number, and both are kept as evidence. */
      byChain: [DeviceId, number]
      byTime: [number, DeviceId, number]
      byGseq: [string, number]
      byKind: [string, number]
    }
  }
  outbox: { key: number; value: Waiting }
  blobs: { key: Hash; value: KeptBlob; indexes: { bySent: 0 | 1 } }
}

export const databaseName = 'bathkeeper'
export const databaseVersion = 1
