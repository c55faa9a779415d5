import type { Kysely, Transaction } from 'kysely'
import type { LiveEvent } from '../../wire/live.ts'
import type { Tables } from './tables.ts'

/** Kysely on the database itself or on a transaction in it. */
export type Sql = Kysely<Tables>
export type Tx = Transaction<Tables>

export interface Database {
  readonly dialect: 'sqlite' | 'postgres'
  readonly sql: Sql
  /** Mixed into nonces: one of an earlier life is refused where the spent ones were kept in memory. Empty where all instances share them. */
  readonly life: string
  /** All that `work` does with `tx` becomes durable together, or not at all. */
  transact<T>(work: (tx: Tx) => Promise<T>): Promise<T>
  /** The same for what needs the record's lock, with what else waits for it. `work` may be done anew, and then begins from what the database says. */
  transactInTurn<T>(work: (tx: Tx) => Promise<T>): Promise<T>
  /** Reads that all see the record as it was at one moment. */
  snapshot<T>(work: (tx: Tx) => Promise<T>): Promise<T>
  /** Tells every instance over this database, this one too, once the transaction is committed. */
  announce(tx: Sql, event: LiveEvent): Promise<void>
  listen(hear: (event: LiveEvent) => void): () => void
  close(): Promise<void>
}
