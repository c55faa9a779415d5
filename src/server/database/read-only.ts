import { Kysely, SqliteDialect } from 'kysely'
import { openFile } from './sqlite.ts'
import type { Sql } from './database.ts'
import type { Tables } from './tables.ts'

/** Works with a database file as it is at this moment, while a server may be writing to it. */
export const readFileDatabase = async <T>(file: string, work: (sql: Sql) => Promise<T>): Promise<T> => {
  const opened = openFile(file, { readonly: true })
  const sql = new Kysely<Tables>({ dialect: new SqliteDialect({ database: opened }) })
  try {
    return await sql.transaction().execute(work)
  } finally {
    await sql.destroy()
  }
}
