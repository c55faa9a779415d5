import { EventEmitter } from 'node:events'
import { Kysely, PostgresDialect, sql as text } from 'kysely'
import pg from 'pg'
import { liveEvent, type LiveEvent } from '../../wire/live.ts'
import type { Database } from './database.ts'
import type { Tables } from './tables.ts'
import { together } from './together.ts'

const channel = 'bathkeeper'
const int8 = 20
/** How the connections of a server show in `pg_stat_activity`. */
const serverName = 'bathkeeper'

/** Whether a server is connected to this database. */
export const isServed = async (sql: Kysely<Tables>): Promise<boolean> => {
  const query = text<{ servers: number }>`select count(*) as servers from pg_stat_activity where datname = current_database() and application_name = ${serverName}`
  return ((await query.execute(sql)).rows[0]?.servers ?? 0) > 0
}

/** Sums and counts come as int8 text; every one of ours fits a number, so it is read as one. */
const getTypeParser = (oid: number, format?: 'text' | 'binary'): ((value: string) => unknown) =>
  oid === int8 ? Number : (pg.types.getTypeParser(oid, format as 'text') as (value: string) => unknown)

/**
 * PostgreSQL behind the same code. What one instance announces reaches the others by NOTIFY, which PostgreSQL delivers at commit. The
 * listening connection is made anew when it breaks, and then tells the head as it is, since notifications in between are gone.
 */
export const postgresDatabase = (url: string, report: (error: unknown) => void, applicationName = serverName): Database => {
  const types = { getTypeParser: getTypeParser as typeof pg.types.getTypeParser }
  const pool = new pg.Pool({ connectionString: url, application_name: applicationName, max: 10, connectionTimeoutMillis: 5_000, types })
  pool.on('error', report)
  const sql = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) })
  const live = new EventEmitter<{ event: [LiveEvent] }>()
  live.setMaxListeners(0)

  let listener: pg.Client | undefined
  let retry: NodeJS.Timeout | undefined
  let closed = false
  const catchUp = async (): Promise<void> => {
    const head = await sql.selectFrom('record_head').select('gseq').executeTakeFirst()
    const epoch = await sql.selectFrom('facts').select('value').where('name', '=', 'epoch').executeTakeFirst()
    if (head && epoch) live.emit('event', { event: 'head', data: { gseq: head.gseq, epoch: epoch.value } })
  }
  const connect = async (): Promise<void> => {
    const client = new pg.Client({ connectionString: url, application_name: applicationName, keepAlive: true })
    const again = (error?: unknown): void => {
      if (closed || retry) return
      if (error) report(error)
      retry = setTimeout(() => {
        retry = undefined
        connect().then(catchUp).catch(report)
      }, 2_000)
    }
    client.on('error', again)
    client.on('end', () => again())
    client.on('notification', ({ payload }) => {
      const parsed = liveEvent.safeParse(JSON.parse(payload ?? 'null'))
      if (parsed.success) live.emit('event', parsed.data)
    })
    try {
      await client.connect()
      await client.query(`LISTEN ${channel}`)
      listener = client
    } catch (error) {
      again(error)
    }
  }
  const listening = connect()

  return {
    dialect: 'postgres',
    sql,
    life: '',
    transact: (work) => sql.transaction().execute(work),
    transactInTurn: together((work) => sql.transaction().execute(work)),
    snapshot: (work) => sql.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(work),
    announce: async (tx, event) => {
      await text`select pg_notify(${channel}, ${JSON.stringify(event)})`.execute(tx)
    },
    listen: (hear) => {
      live.on('event', hear)
      return () => live.off('event', hear)
    },
    close: async () => {
      closed = true
      clearTimeout(retry)
      await listening
      await listener?.end()
      await sql.destroy()
    },
  }
}
