import type { Sql, Tx } from './database.ts'
import type { CodeRow } from './tables.ts'

export const insertCodes = async (tx: Sql, rows: readonly CodeRow[]): Promise<void> => {
  await tx.insertInto('codes').values(rows).execute()
}

export const readCode = (sql: Sql, hash: string): Promise<CodeRow | undefined> =>
  sql.selectFrom('codes').selectAll().where('hash', '=', hash).executeTakeFirst()

/** Uses up a code and its other form, and keeps whom it made a supervisor; false where another request was quicker. */
export const useCode = async (tx: Tx, code: CodeRow, used: { at: number; by: string; person: string | null }): Promise<boolean> => {
  const { numUpdatedRows } = await tx
    .updateTable('codes')
    .set({ used_at: used.at, used_by: used.by, person: used.person })
    .where('hash', 'in', [code.hash, code.pair])
    .where('used_at', 'is', null)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}

/** Codes that have run out, a day later; until then a phone that lost the answer may ask again with the same one. */
export const dropOldCodes = async (sql: Sql, before: number): Promise<void> => {
  await sql.deleteFrom('codes').where('until', '<', before).execute()
}

/** Takes back what has not been used: too many wrong tries, a new start, or the server has its first supervisor. */
export const voidCodes = async (sql: Sql, purposes: readonly CodeRow['purpose'][]): Promise<number> => {
  const { numDeletedRows } = await sql.deleteFrom('codes').where('used_at', 'is', null).where('purpose', 'in', purposes).executeTakeFirst()
  return Number(numDeletedRows)
}
