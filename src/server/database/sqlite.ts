import { randomBytes } from 'node:crypto'
import { EventEmitter } from 'node:events'
import Sqlite from 'better-sqlite3'
import { CompiledQuery, Kysely, SqliteDialect, SqliteDriver, type DatabaseConnection, type Driver, type SqliteDatabase, type SqliteDialectConfig, type SqliteStatement } from 'kysely'
import type { LiveEvent } from '../../wire/live.ts'
import type { Database } from './database.ts'
import type { Tables } from './tables.ts'
import { together } from './together.ts'

/** `integrity_check` found something; the file was not touched. */
export class CorruptDatabase extends Error {
  constructor(
    readonly file: string,
    readonly findings: string,
    options?: ErrorOptions,
  ) {
    super(`corrupt database ${file}`, options)
    this.name = 'CorruptDatabase'
  }
}

/**
 * Takes the write lock at the start of a transaction: one that reads first and then writes would be refused, without a second try, when a
 * terminal command has written in between. And a transaction that SQLite itself has rolled back (disk full) is not rolled back again, which
 * would hide the first error.
 */
class ImmediateDriver extends SqliteDriver {
  readonly #file: Sqlite.Database
  constructor(config: SqliteDialectConfig, file: Sqlite.Database) {
    super(config)
    this.#file = file
  }
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'))
  }
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#file.inTransaction) await super.rollbackTransaction(connection)
  }
}

/** How many statements are kept ready: more than the server has, since lists come in many lengths. */
const mostStatements = 300

/** To prepare the statement that takes in a batch takes longer than to run it, so the last ones are kept. */
const remembering = (file: Sqlite.Database): SqliteDatabase => {
  const ready = new Map<string, Sqlite.Statement>()
  const prepare = (text: string): Sqlite.Statement => {
    const statement = ready.get(text) ?? file.prepare(text)
    ready.delete(text)
    ready.set(text, statement)
    if (ready.size > mostStatements) ready.delete(ready.keys().next().value!)
    return statement
  }
  return { prepare: (text) => prepare(text) as SqliteStatement, close: () => file.close() }
}

class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig
  readonly #file: Sqlite.Database
  constructor(file: Sqlite.Database) {
    const config = { database: remembering(file) }
    super(config)
    this.#config = config
    this.#file = file
  }
  override createDriver(): Driver {
    return new ImmediateDriver(this.#config, this.#file)
  }
}

const isCorruption = (error: unknown): boolean =>
  error instanceof Sqlite.SqliteError && (error.code.startsWith('SQLITE_CORRUPT') || error.code === 'SQLITE_NOTADB')

/** Opens the file, checks that it is whole, unless that is known, and sets what durability needs. A damaged file is left as it is. */
export const openFile = (file: string, { readonly = false, isWhole = false }: { readonly?: boolean; isWhole?: boolean } = {}): Sqlite.Database => {
  let opened: Sqlite.Database | undefined
  try {
    opened = new Sqlite(file, { timeout: 10_000, readonly })
    if (!readonly) {
      opened.pragma('journal_mode = WAL')
      opened.pragma('synchronous = FULL')
    }
    opened.pragma('foreign_keys = ON')
    // `quick_check` leaves out whether indexes agree with their tables, which takes minutes on a record of many years.
    if (!isWhole) {
      const findings = opened.pragma('quick_check(5)', { simple: false }) as { quick_check: string }[]
      const lines = findings.map((line) => line.quick_check)
      if (lines.length !== 1 || lines[0] !== 'ok') throw new CorruptDatabase(file, lines.join('; '))
    }
    return opened
  } catch (error) {
    opened?.close()
    if (isCorruption(error)) throw new CorruptDatabase(file, error instanceof Error ? error.message : '', { cause: error })
    throw error
  }
}

export const sqliteDatabase = (file: string, known: { isWhole?: boolean } = {}): Database => {
  const opened = openFile(file, known)
  // Spent nonces in memory, hiding the table of that name in the file: every request spends one, and none is to wait for the disk.
  opened.exec('PRAGMA temp_store = MEMORY; CREATE TEMP TABLE nonces (nonce TEXT PRIMARY KEY, until INTEGER NOT NULL)')
  const sql = new Kysely<Tables>({ dialect: new ImmediateDialect(opened) })
  const live = new EventEmitter<{ event: [LiveEvent] }>()
  live.setMaxListeners(0)
  return {
    dialect: 'sqlite',
    sql,
    life: randomBytes(8).toString('hex'),
    transact: (work) => sql.transaction().execute(work),
    transactInTurn: together((work) => sql.transaction().execute(work)),
    snapshot: (work) => sql.transaction().execute(work),
    announce: (_tx, event) => {
      // One connection: whoever pulls on hearing this waits until the transaction has ended.
      live.emit('event', event)
      return Promise.resolve()
    },
    listen: (hear) => {
      live.on('event', hear)
      return () => live.off('event', hear)
    },
    close: async () => {
      if (opened.open) opened.pragma('wal_checkpoint(TRUNCATE)')
      await sql.destroy()
    },
  }
}
