import type { DeviceId, EntryId, Hash } from '../record/ids.ts'
import type { Kept } from './kept.ts'
import type { KeptBlob, ShelfName, Waiting } from './idb/tables.ts'

/** Where this device's own chain ends: number and hash of its newest entry; before the first, 0 and the receipt's seed. */
export interface ChainHead {
  dev: DeviceId
  seq: number
  h: Hash
}

/** A phone becomes a device: all of it in one transaction. */
export interface Beginning {
  head: ChainHead
  /** The head that was there when what follows was made; undefined where there was none. */
  expected: ChainHead | undefined
  receipt: unknown
  keys: unknown
  /** The device that this phone was before, with what it had not sent still to be handed in; the outbox is emptied. */
  former?: { dev: DeviceId; row: unknown }
  /** Everything that is here belongs to a laboratory that no longer exists, and is removed. */
  forget?: boolean
}

export interface ChainStore {
  head(): Promise<ChainHead | undefined>
  begin(beginning: Beginning): Promise<'begun' | 'moved'>
  /** Entry, place in the outbox, photos and head in one durable transaction; `moved` when the head is no longer `expected`, unless the entry is there already. */
  append(entry: Kept, expected: ChainHead, blobs: readonly KeptBlob[]): Promise<'saved' | 'moved'>
  /** How many wait, and the first of them. */
  waiting(): Promise<{ count: number; oldest?: Waiting }>
  /** The entries of a device from a number on, oldest first, up to one that cannot be read. Throws when that is the first. */
  chain(dev: DeviceId, from: number, limit: number): Promise<Kept[]>
  /** Takes out of the outbox what these acknowledgements name by id and number, and nothing else. Gives the ids that went. */
  acknowledge(acks: readonly { id: EntryId; seq: number }[]): Promise<EntryId[]>
  /** Marks entries that the server keeps apart as of a second history: nobody else counts them, so neither does this phone. Gives those that are new to it. */
  setApart(ids: readonly EntryId[], epoch: string): Promise<Kept[]>
  /** Puts the own chain from a number on back into the outbox: the server was restored and lacks it. Gives how many. */
  requeue(from: number): Promise<number>
}

/** How far the server's record was taken in, and the value of its chain there. */
export interface Cursor {
  epoch: string
  after: number
  sh: Hash
}

/** A page from the server, verified, with the place after it. Applied whole or not at all. */
export interface Page {
  /** The cursor from which it was asked; when another runner moved it meanwhile, nothing is applied. */
  from: Cursor
  entries: readonly Kept[]
  devices: readonly { dev: DeviceId }[]
  next: Cursor
}

export interface Applied {
  applied: boolean
  /** Entries that are new here or of which the server now says more. */
  changed: Kept[]
  /** Own entries that this phone had lost and the server gave back. */
  regained: number
}

export interface PullStore {
  cursor(): Promise<Cursor | undefined>
  /** Before the first pull, and when the server's database has another epoch. */
  startCursor(cursor: Cursor): Promise<void>
  apply(page: Page): Promise<Applied>
}

export interface Order {
  /** First and last time, ms since 1970, both included. */
  from?: number
  to?: number
  limit?: number
  newestFirst?: boolean
}

export interface ReadStore {
  byIds(ids: readonly EntryId[]): Promise<Kept[]>
  inTime(order: Order): Promise<Kept[]>
  ofKind(kind: string, order: Order): Promise<Kept[]>
  count(): Promise<number>
}

export interface BlobStore {
  keepBlob(blob: KeptBlob): Promise<void>
  blob(sha256: Hash): Promise<KeptBlob | undefined>
  unsentBlobs(): Promise<Hash[]>
  blobSent(sha256: Hash): Promise<void>
  /** The server was restored and may lack photos that it once had: those that are still here are offered again. */
  offerBlobsAgain(): Promise<number>
  /** Drops the photos that the server has. Gives how many. */
  dropSentBlobs(): Promise<number>
}

/** Small things by name. */
export interface ShelfStore {
  take(shelf: ShelfName, key: string): Promise<unknown>
  keep(shelf: ShelfName, key: string, value: unknown): Promise<void>
  /** Read, work out and write in one transaction, so that two tabs cannot undo each other; gives what was written. */
  revise<T>(shelf: ShelfName, key: string, change: (value: unknown) => T): Promise<T>
  remove(shelf: ShelfName, key: string): Promise<void>
  keys(shelf: ShelfName): Promise<string[]>
}

/** The record on a phone. Two implementations, IndexedDB and one in memory for tests, held to the same contract by one suite. */
export interface Store extends ChainStore, PullStore, ReadStore, BlobStore, ShelfStore {
  close(): Promise<void>
}
