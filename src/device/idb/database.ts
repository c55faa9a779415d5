import { openDB, type IDBPDatabase } from 'idb'
import { databaseName, databaseVersion, shelves, type Tables } from './tables.ts'

export type Database = IDBPDatabase<Tables>

export interface DatabaseEvents {
  /** This page cannot open the new version because another, older page is still open. */
  onBlocked(): void
  /** The browser closed the connection, or a newer page asked for it to be closed. */
  onLost(): void
}

/**
 * Upgrades only ever add: a store or an index is never removed or renamed, so a page of the version before finds all it knows.
 * Each `if` below is one version; they run one after the other for a phone that skipped some.
 */
export const openDatabase = (events: DatabaseEvents, name: string = databaseName): Promise<Database> =>
  openDB<Tables>(name, databaseVersion, {
    upgrade(database, oldVersion) {
      if (oldVersion < 1) {
        const entries = database.createObjectStore('entries', { keyPath: 'entry.id' })
        entries.createIndex('byChain', ['entry.dev', 'entry.seq'])
        entries.createIndex('byTime', ['time', 'entry.dev', 'entry.seq'])
        entries.createIndex('byGseq', ['epoch', 'gseq'])
        entries.createIndex('byKind', ['entry.kind', 'time'])
        database.createObjectStore('outbox', { keyPath: 'seq' })
        database.createObjectStore('blobs', { keyPath: 'sha256' }).createIndex('bySent', 'sent')
        for (const shelf of shelves) database.createObjectStore(shelf)
      }
    },
    blocked: () => events.onBlocked(),
    blocking(_current, _wanted, event) {
      // The newer page must not wait for this one: what was saved is in the database, and the next use here says `newerVersion`.
      ;(event.target as IDBDatabase).close()
      events.onLost()
    },
    terminated: () => events.onLost(),
  })
