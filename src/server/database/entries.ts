import type { Sql, Tx } from './database.ts'
import type { EntryRow, NewEntryRow } from './tables.ts'

/** Rows in one statement: SQLite takes at most 32,766 parameters, PostgreSQL 65,535. */
const rowsAtOnce = 200

export const insertEntries = async (tx: Tx, rows: readonly NewEntryRow[]): Promise<void> => {
  for (let from = 0; from < rows.length; from += rowsAtOnce) {
    await tx.insertInto('entries').values(rows.slice(from, from + rowsAtOnce)).execute()
  }
}

export const entriesOfDevice = (sql: Sql, dev: string, seqs: readonly number[]): Promise<Pick<EntryRow, 'seq' | 'h' | 'gseq'>[]> =>
  sql.selectFrom('entries').select(['seq', 'h', 'gseq']).where('dev', '=', dev).where('seq', 'in', seqs).execute()

export const knownIdsAmong = async (sql: Sql, ids: readonly string[]): Promise<Set<string>> =>
  new Set((await sql.selectFrom('entries').select('id').where('id', 'in', ids).execute()).map(({ id }) => id))

export const entryOfDevice = (sql: Sql, dev: string, seq: number): Promise<EntryRow | undefined> =>
  sql.selectFrom('entries').selectAll().where('dev', '=', dev).where('seq', '=', seq).executeTakeFirst()

/** The entry that first carried this id, whoever it is from. */
export const entryById = (sql: Sql, id: string): Promise<EntryRow | undefined> =>
  sql.selectFrom('entries').selectAll().where('id', '=', id).orderBy('gseq').limit(1).executeTakeFirst()

export const entriesAfter = (sql: Sql, after: number, limit: number): Promise<EntryRow[]> =>
  sql.selectFrom('entries').selectAll().where('gseq', '>', after).orderBy('gseq').limit(limit).execute()

/** The last entry at or before that number. */
export const entryAt = (sql: Sql, gseq: number): Promise<EntryRow | undefined> =>
  sql.selectFrom('entries').selectAll().where('gseq', '<=', gseq).orderBy('gseq', 'desc').limit(1).executeTakeFirst()

export const entryCounts = async (sql: Sql): Promise<{ status: string; count: number }[]> =>
  sql
    .selectFrom('entries')
    .select((eb) => ['status', eb.fn.countAll<number>().as('count')])
    .groupBy('status')
    .execute()
