import type { BroughtBack, lookThroughRecord, Progress, RecordFound } from '../device/record-import.ts'
import type { Lab } from '../projections/lab.ts'
import type { DeviceId, Hash } from '../record/ids.ts'
import type { Head } from '../record/kinds/sign-off.ts'
import type { PublicKey } from '../record/seal.ts'
import type { ShiftFile } from '../wire/shift-file.ts'

/** A device as this phone knows it: the key under which its entries were verified here. */
export interface KnownDevice {
  dev: DeviceId
  name: string
  key: PublicKey
  seed?: Hash
}

/** What lies deeper in this phone's store than the fold that the screens read: the entries as they were sealed, and the keys. */
export interface Archive {
  /** Sends and fetches now. Whether this phone then knows all that the server has. */
  exchange(): Promise<boolean>
  /** The whole log told anew, for days that are no longer in memory. */
  whole(): Promise<Lab>
  /** One device's chain from a number to another, both included. */
  chain(dev: DeviceId, from: number, to: number): Promise<ShiftFile['entries']>
  devices(): Promise<KnownDevice[]>
  /** The server as this phone came to know it, and how far its record was seen to go. */
  server(): Promise<{ epoch: string; key: PublicKey; head?: Head } | undefined>
  sha256(text: string): Promise<Hash>
  /** A picture by the hash of its bytes: from this phone, else from the server; undefined where neither gives it. */
  photo(sha256: Hash): Promise<Blob | undefined>
  /** The record of a span as the text of a file; undefined where there is no entry in it. */
  record(asked: { laboratory: string; timeZone: string; from?: number; to?: number }): Promise<string | undefined>
  /** Looks through such a file. What the server has must have been fetched. */
  lookThrough(text: string, onProgress?: Progress): ReturnType<typeof lookThroughRecord>
  bringBack(found: RecordFound, onProgress?: Progress): Promise<BroughtBack>
}
