import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { freePort, startServer } from '../server/kill.ts'
import { crowd, footprint, roundOf } from './crowd.ts'
import { median, type Figure } from './figure.ts'

const phonesThere = 20
const everyMilliseconds = 60_000

/** Shifts without end: phones push rounds, pull what the others wrote, and report, as fast as a tenth of the server allows; memory and handles each minute. */
export const soak = async (minutes: number): Promise<Figure[]> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-soak-'))
  const server = await startServer({ folder, port: await freePort() })
  const database = sqliteDatabase(join(folder, 'bathkeeper.db'))
  const phones = await crowd(database, [server.origin], phonesThere)
  await database.close()
  const seen: { megabytes: number; handles: number }[] = []
  const until = performance.now() + minutes * 60_000
  let rounds = 0
  const look = (): void => {
    const now = footprint(server.process.pid!)
    seen.push(now)
    process.stderr.write(`${seen.length} min: ${rounds.toLocaleString('en')} rounds, ${now.megabytes.toFixed(0)} MB, ${now.handles} handles\n`)
  }
  const watch = setInterval(look, everyMilliseconds)
  const all = Promise.all(
    phones.map(async (phone) => {
      let after = 0
      while (performance.now() < until) {
        const { error } = await phone.push(roundOf(phone, 12))
        if (error) throw new Error(`push: ${error.code}`)
        rounds++
        const page = (await (await phone.send('GET', `/api/v1/pull?epoch=${phone.epoch}&after=${after}&limit=500`)).json()) as { next: number }
        after = page.next
        await new Promise((done) => setTimeout(done, 2_000))
      }
    }),
  )
  try {
    await all
    look()
  } finally {
    clearInterval(watch)
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
  const quarter = Math.max(1, Math.floor(seen.length / 4))
  const [early, late] = [seen.slice(quarter, 2 * quarter + 1), seen.slice(-quarter)].map((some) => ({ megabytes: median(some.map((it) => it.megabytes)), handles: median(some.map((it) => it.handles)) })) as [typeof seen[0], typeof seen[0]]
  return [
    {
      what: `soak of ${minutes} minutes: ${phonesThere} phones, ${rounds.toLocaleString('en')} rounds, ${(rounds * 12).toLocaleString('en')} entries`,
      figure: `${Math.round(late.megabytes)} MB, ${late.handles} handles`, against: `in the second quarter ${Math.round(early.megabytes)} MB, ${early.handles} handles`, ratio: late.megabytes / early.megabytes,
      goal: 'flat', isMet: late.megabytes <= early.megabytes * 1.15 && late.handles <= early.handles + 5,
    },
  ]
}
