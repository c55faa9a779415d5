import { Migrator, type Kysely } from 'kysely'
import { record } from './migrations/2026-11-25-record.ts'
import type { Tables } from './tables.ts'

/** The database was written by a later version of this program, or by none: better not touched. */
export class ForeignDatabase extends Error {
  constructor(cause: unknown) {
    super('foreign database', { cause })
    this.name = 'ForeignDatabase'
  }
}

/** Brings the tables up to this version. In the order of their dates, each in its own transaction, under a lock against a second instance. */
export const migrate = async (db: Kysely<Tables>, dialect: 'sqlite' | 'postgres'): Promise<void> => {
  const bytesType = dialect === 'sqlite' ? 'blob' : 'bytea'
  const migrator = new Migrator({
    db,
    provider: { getMigrations: () => Promise.resolve({ '2026-11-25-record': record(bytesType) }) },
  })
  const { error } = await migrator.migrateToLatest()
  if (!error) return
  if (error instanceof Error && /previously executed migration|corrupted migrations/.test(error.message)) throw new ForeignDatabase(error)
  throw error instanceof Error ? error : new Error('migration failed', { cause: error })
}
