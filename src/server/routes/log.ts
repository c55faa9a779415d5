import type { LogAnswer } from '../../wire/people.ts'
import { logBefore } from '../database/log.ts'
import type { Handler } from './given.ts'

export const log: Handler<'log'> = async ({ parts, query }) => ({
  lines: (await logBefore(parts.database.sql, query.before)).map(({ n, at, what, dev, person, detail }) => ({
    n,
    at,
    what: what as LogAnswer['lines'][number]['what'],
    ...(dev === null ? {} : { dev }),
    ...(person === null ? {} : { person }),
    ...(detail === null ? {} : { detail }),
  })),
})
