import type { Sql } from './database.ts'

/** True the first time only, over all instances. */
export const spendNonce = async (sql: Sql, nonce: string, until: number): Promise<boolean> => {
  const { numInsertedOrUpdatedRows } = await sql
    .insertInto('nonces')
    .values({ nonce, until })
    .onConflict((it) => it.column('nonce').doNothing())
    .executeTakeFirst()
  return (numInsertedOrUpdatedRows ?? 0n) > 0n
}

export const dropOldNonces = async (sql: Sql, now: number): Promise<void> => {
  await sql.deleteFrom('nonces').where('until', '<', now).execute()
}
