import type { Sql, Tx } from './database.ts'
import type { PersonRow } from './tables.ts'

export const readPerson = (sql: Sql, person: string): Promise<PersonRow | undefined> =>
  sql.selectFrom('people').selectAll().where('person', '=', person).executeTakeFirst()

export const readPeople = (sql: Sql): Promise<PersonRow[]> => sql.selectFrom('people').selectAll().orderBy('person').execute()

export const writePerson = async (tx: Sql, row: PersonRow): Promise<void> => {
  await tx
    .insertInto('people')
    .values(row)
    .onConflict((it) => it.column('person').doUpdateSet(row))
    .execute()
}

export const removePerson = async (tx: Sql, person: string): Promise<void> => {
  await tx.deleteFrom('people').where('person', '=', person).execute()
}

/**
 * Counts a try before it is looked at, so that tries made at the same time cannot share one place. The row comes back as it was counted;
 * undefined where the person is locked out.
 */
export const countTry = async (tx: Tx, person: string, now: number, lockMsFor: (wrongTries: number) => number): Promise<PersonRow | undefined> => {
  const row = await tx
    .updateTable('people')
    .set((eb) => ({ wrong_tries: eb('wrong_tries', '+', 1) }))
    .where('person', '=', person)
    .where('locked_until', '<=', now)
    .returningAll()
    .executeTakeFirst()
  if (row) await tx.updateTable('people').set({ locked_until: now + lockMsFor(row.wrong_tries) }).where('person', '=', person).execute()
  return row
}

export const clearTries = async (sql: Sql, person: string): Promise<void> => {
  await sql.updateTable('people').set({ wrong_tries: 0, locked_until: 0 }).where('person', '=', person).execute()
}
