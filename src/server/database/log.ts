import type { LogAnswer } from '../../wire/people.ts'
import type { Sql } from './database.ts'
import { nextNumber } from './head.ts'
import type { Tables } from './tables.ts'

type What = LogAnswer['lines'][number]['what']

/** Control characters out, and short: what stands here may come from outside. */
const tidy = (text: string): string => text.replace(/\p{Cc}+/gu, ' ').slice(0, 300)

export const note = async (tx: Sql, at: number, what: What, about: { dev?: string; person?: string; detail?: string } = {}): Promise<void> => {
  const n = await nextNumber(tx, 'log')
  await tx
    .insertInto('log')
    .values({ n, at, what, dev: about.dev ?? null, person: about.person ?? null, detail: about.detail === undefined ? null : tidy(about.detail) })
    .execute()
}

export const logBefore = (sql: Sql, before: number | undefined): Promise<Tables['log'][]> =>
  sql
    .selectFrom('log')
    .selectAll()
    .$if(before !== undefined, (it) => it.where('n', '<', before!))
    .orderBy('n', 'desc')
    .limit(200)
    .execute()
