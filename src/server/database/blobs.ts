import type { Sql, Tx } from './database.ts'
import type { Tables } from './tables.ts'

export const isNamed = async (sql: Sql, sha256: string): Promise<boolean> =>
  (await sql.selectFrom('blob_refs').select('gseq').where('sha256', '=', sha256).limit(1).executeTakeFirst()) !== undefined

export const nameBlobs = async (tx: Tx, refs: readonly Tables['blob_refs'][]): Promise<void> => {
  if (!refs.length) return
  await tx.insertInto('blob_refs').values(refs).onConflict((it) => it.doNothing()).execute()
}

export const blobSize = async (sql: Sql, sha256: string): Promise<{ bytes: number; type: string } | undefined> =>
  sql.selectFrom('blobs').select(['bytes', 'type']).where('sha256', '=', sha256).executeTakeFirst()

export const readBlob = (sql: Sql, sha256: string): Promise<Tables['blobs'] | undefined> =>
  sql.selectFrom('blobs').selectAll().where('sha256', '=', sha256).executeTakeFirst()

export const insertBlob = async (tx: Tx, row: Tables['blobs']): Promise<void> => {
  await tx.insertInto('blobs').values(row).onConflict((it) => it.column('sha256').doNothing()).execute()
}

export const blobTotals = async (sql: Sql): Promise<{ count: number; bytes: number }> => {
  const { count, bytes } = await sql
    .selectFrom('blobs')
    .select((eb) => [eb.fn.countAll<number>().as('count'), eb.fn.sum<number | string | null>('bytes').as('bytes')])
    .executeTakeFirstOrThrow()
  return { count, bytes: Number(bytes ?? 0) }
}
