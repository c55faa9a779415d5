import type { Sql, Tx } from './database.ts'
import type { FactName, Tables } from './tables.ts'

export const readFact = async (sql: Sql, name: FactName): Promise<string | undefined> =>
  (await sql.selectFrom('facts').select('value').where('name', '=', name).executeTakeFirst())?.value

export const writeFact = async (tx: Sql, name: FactName, value: string): Promise<void> => {
  await tx
    .insertInto('facts')
    .values({ name, value })
    .onConflict((it) => it.column('name').doUpdateSet({ value }))
    .execute()
}

export const readEpoch = async (sql: Sql): Promise<string> => {
  const epoch = await readFact(sql, 'epoch')
  if (epoch === undefined) throw new Error('the database has no epoch')
  return epoch
}

/** From here on gseq numbers may name other entries than before: whoever pulled must pull again from the start. */
export const beginEpoch = async (tx: Tx, given: { epoch: string; since: number; why: Tables['epochs']['why'] }): Promise<void> => {
  const head = await tx.selectFrom('record_head').select('gseq').executeTakeFirst()
  await tx.insertInto('epochs').values({ ...given, from_gseq: head?.gseq ?? 0 }).execute()
  await writeFact(tx, 'epoch', given.epoch)
}

export const readEpochs = (sql: Sql): Promise<Tables['epochs'][]> => sql.selectFrom('epochs').selectAll().orderBy('since').orderBy('from_gseq').execute()

/** Devices of an invented laboratory that was wiped do not come back with what they hold of it. */
export const endedByWipe = async (sql: Sql, epoch: string): Promise<boolean> => {
  const epochs = await readEpochs(sql)
  const place = epochs.findIndex((it) => it.epoch === epoch)
  return place >= 0 && epochs.slice(place + 1).some(({ why }) => why === 'wiped')
}
