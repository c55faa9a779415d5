import type { Sql, Tx } from './database.ts'
import { nextNumber } from './head.ts'
import type { Tables } from './tables.ts'

type Aside = Tables['asides']

/** Keeps a well-signed entry that does not fit its device's chain; the same one again changes nothing. */
export const keepAside = async (tx: Tx, given: Omit<Aside, 'n'>): Promise<void> => {
  const n = await nextNumber(tx, 'aside')
  await tx
    .insertInto('asides')
    .values({ ...given, n })
    .onConflict((it) => it.columns(['dev', 'h']).doNothing())
    .execute()
}

/** Which of these are kept aside already. */
export const asidesAmong = async (sql: Sql, dev: string, hashes: readonly string[]): Promise<Set<string>> =>
  new Set((await sql.selectFrom('asides').select('h').where('dev', '=', dev).where('h', 'in', hashes).execute()).map(({ h }) => h))

/** Whether this hash is of an entry of a second history: what follows on it belongs aside with it. */
export const isOfOtherHistory = async (sql: Sql, dev: string, h: string): Promise<boolean> =>
  (await sql.selectFrom('asides').select('n').where('dev', '=', dev).where('h', '=', h).where('why', '=', 'fork').executeTakeFirst()) !== undefined

export const asidesOf = (sql: Sql, dev: string): Promise<Aside[]> =>
  sql.selectFrom('asides').selectAll().where('dev', '=', dev).orderBy('n').limit(1_000).execute()

export const asideCounts = async (sql: Sql): Promise<Map<string, number>> => {
  const rows = await sql
    .selectFrom('asides')
    .select((eb) => ['dev', eb.fn.countAll<number>().as('count')])
    .groupBy('dev')
    .execute()
  return new Map(rows.map(({ dev, count }) => [dev, count]))
}
