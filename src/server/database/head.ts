import type { Hash } from '../../record/ids.ts'
import { chainStart } from '../../wire/signed-texts.ts'
import type { Sql, Tx } from './database.ts'

/** How far the record goes, and the chain's value there. */
export interface Reach {
  gseq: number
  sh: Hash
}

export const readReach = async (sql: Sql): Promise<Reach> => {
  const { gseq, sh } = await sql.selectFrom('record_head').select(['gseq', 'sh']).executeTakeFirstOrThrow()
  return { gseq, sh: sh as Hash }
}

/** The same, with the lock that keeps every other writer out until this transaction ends. */
export const lockReach = async (tx: Tx): Promise<Reach> => {
  const { gseq, sh } = await tx
    .updateTable('record_head')
    .set((eb) => ({ turn: eb('turn', '+', 1) }))
    .returning(['gseq', 'sh'])
    .executeTakeFirstOrThrow()
  return { gseq, sh: sh as Hash }
}

export const writeReach = async (tx: Tx, { gseq, sh }: Reach): Promise<void> => {
  await tx.updateTable('record_head').set({ gseq, sh }).execute()
}

/** Makes the one row where there is none yet; harmless when two instances start at once. */
export const beginRecord = async (tx: Tx): Promise<void> => {
  await tx
    .insertInto('record_head')
    .values({ one: 1, gseq: 0, sh: chainStart, turn: 0 })
    .onConflict((it) => it.column('one').doNothing())
    .execute()
  await tx
    .insertInto('counters')
    .values([{ name: 'log', value: 0 }, { name: 'aside', value: 0 }])
    .onConflict((it) => it.column('name').doNothing())
    .execute()
}

export const nextNumber = async (tx: Sql, name: 'log' | 'aside'): Promise<number> => {
  const { value } = await tx
    .updateTable('counters')
    .set((eb) => ({ value: eb('value', '+', 1) }))
    .where('name', '=', name)
    .returning('value')
    .executeTakeFirstOrThrow()
  return value
}
