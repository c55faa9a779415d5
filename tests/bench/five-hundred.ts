import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Sealed } from '../../src/record/entry.ts'
import type { Database } from '../../src/server/database/database.ts'
import { postgresDatabase } from '../../src/server/database/postgres.ts'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { bin, Postgres } from '../contract/postgres.ts'
import { freePort, startServer, type RunningServer } from '../server/kill.ts'
import type { Phone } from '../server/phone.ts'
import { crowd, footprint, roundOf } from './crowd.ts'
import { median, millisecondsText, percentile, type Figure } from './figure.ts'

const phonesThere = 500
const minutes = 5
const entriesInRound = 12
/** A minute of the laboratory passes in so many milliseconds. */
const minuteMilliseconds = 10_000

const sleep = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, Math.max(0, milliseconds)))

interface Load {
  /** From when a phone was to send to its acknowledgement. */
  waits: number[]
  acknowledged: number
  /** How often a server said that it was busy; the phone came again. */
  busy: number
  /** Of all instances together. */
  megabytes: number[]
}

/** Every phone sends a round each minute, at a second of its own, whether or not the others have been answered. */
const load = async (phones: readonly Phone[], servers: readonly RunningServer[]): Promise<Load> => {
  const megabytes: number[] = []
  const watch = setInterval(() => megabytes.push(servers.reduce((sum, { process }) => sum + footprint(process.pid!).megabytes, 0)), 500)
  const waits: number[] = []
  let [acknowledged, busy] = [0, 0]
  const pushed = async (phone: Phone, round: Sealed[]): ReturnType<Phone['push']> => {
    for (;;) {
      const answer = await phone.push(round).catch((error: unknown) => {
        if (!String(error).includes('503')) throw error
        busy++
      })
      if (answer) return answer
      await sleep(500)
    }
  }
  // Signed before, since five hundred phones have processors of their own.
  const rounds = phones.map((phone) => Array.from({ length: minutes }, () => roundOf(phone, entriesInRound)))
  const began = performance.now() + 200
  const all = Promise.all(
    phones.map(async (phone, index) => {
      for (const [minute, round] of rounds[index]!.entries()) {
        const due = began + (minute + index / phones.length) * minuteMilliseconds
        await sleep(due - performance.now())
        const { acks, error } = await pushed(phone, round)
        if (error) throw new Error(`push: ${error.code}`)
        waits.push(performance.now() - due)
        acknowledged += acks.length
      }
    }),
  )
  await all.finally(() => clearInterval(watch))
  return { waits, acknowledged, busy, megabytes }
}

const figureOf = async (what: string, database: Database, { waits, acknowledged, busy, megabytes }: Load): Promise<Figure> => {
  const { count } = await database.sql.selectFrom('entries').select((eb) => eb.fn.countAll<number>().as('count')).where('kind', '=', 'note').executeTakeFirstOrThrow()
  const lost = phonesThere * minutes * entriesInRound - Number(count)
  const third = Math.floor(megabytes.length / 3)
  const [before, after] = [median(megabytes.slice(third, 2 * third)), median(megabytes.slice(-third))]
  const p99 = percentile(waits, 0.99)
  return {
    what: `${phonesThere} phones, a round of ${entriesInRound} entries a minute each, ${minutes} minutes in ${(minutes * minuteMilliseconds) / 1000} s, ${what}: acknowledgement`,
    figure: `p50 ${millisecondsText(median(waits))}, p99 ${millisecondsText(p99)}`, against: '', ratio: null, goal: 'p99 ≤ 100 ms, nothing lost, memory flat',
    isMet: p99 <= 100 && lost === 0 && after <= before * 1.15, note: `${acknowledged.toLocaleString('en')} entries acknowledged, ${lost} lost${busy ? `, ${busy} times told to come again` : ''}; memory ${Math.round(before)} MB in the second third, ${Math.round(after)} MB in the last`,
  }
}

const onSqlite = async (): Promise<Figure> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-crowd-'))
  const server = await startServer({ folder, port: await freePort() })
  const database = sqliteDatabase(join(folder, 'bathkeeper.db'))
  try {
    return await figureOf('SQLite', database, await load(await crowd(database, [server.origin], phonesThere), [server]))
  } finally {
    await database.close()
    await server.stop('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
}

const onPostgres = async (): Promise<Figure[]> => {
  if (!bin) return []
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-crowd-'))
  const postgres = await Postgres.start({ isDurable: true })
  const url = await postgres.newDatabase()
  const start = async () => startServer({ folder, port: await freePort(), env: { DATABASE_URL: url } })
  const servers = [await start(), await start()]
  const database = postgresDatabase(url, () => undefined, 'bathkeeper-bench')
  try {
    return [await figureOf('PostgreSQL, two instances', database, await load(await crowd(database, servers.map(({ origin }) => origin), phonesThere), servers))]
  } finally {
    await database.close()
    for (const server of servers) await server.stop('SIGKILL')
    await postgres.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

export const fiveHundredPhones = async (): Promise<Figure[]> => [await onSqlite(), ...(await onPostgres())]
