import { dropSentBlobs, idbBlobs } from './idb/blobs.ts'
import { idbChain } from './idb/chain.ts'
import { Connection } from './idb/connection.ts'
import { openDatabase, type DatabaseEvents } from './idb/database.ts'
import { idbPulling } from './idb/pulling.ts'
import { idbReading } from './idb/reading.ts'
import { createSession } from './idb/session.ts'
import { idbShelves } from './idb/shelves.ts'
import type { Store } from './store.ts'

export interface StoreEvents extends DatabaseEvents {
  /** A row of the record cannot be read and is left out: what can be read should be exported. */
  onUnreadable(where: string): void
}

/** The record on this phone, in IndexedDB. Page and service worker make it from the same files. */
export const createIdbStore = (events: StoreEvents, name?: string): Store => {
  const connection = new Connection((lost) => {
    const onLost = (): void => {
      lost()
      events.onLost()
    }
    return openDatabase({ onBlocked: () => events.onBlocked(), onLost }, name)
  })
  const drop = (): Promise<number> => dropSentBlobs(connection)
  const session = createSession(connection, drop, (where) => events.onUnreadable(where))
  return {
    ...idbChain(session),
    ...idbPulling(session),
    ...idbReading(session),
    ...idbBlobs(session),
    ...idbShelves(session),
    dropSentBlobs: drop,
    close: () => connection.close(),
  }
}
