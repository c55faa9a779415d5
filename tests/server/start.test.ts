import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Sqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { leaveMark } from '../../src/server/database/clean-stop.ts'
import { freePort, killTrials, startServer } from './kill.ts'
import { Phone } from './phone.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bathkeeper-start-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const ask = (request: Request): Promise<Response> => fetch(request)

describe('the server program', { timeout: 60_000 }, () => {
  it('prints a first code once, and no more when there is a supervisor', async () => {
    const port = await freePort()
    const first = await startServer({ folder, port })
    expect(first.code).toMatch(/^[\w-]{22}$/)
    await new Phone(ask, first.origin).enrol(first.code!, { name: 'Helena Sobral', passphrase: 'silver nitrate in the dark' })
    expect(await first.stop()).toBe(0)
    const second = await startServer({ folder, port })
    expect(second.code).toBeUndefined()
    expect(await second.stop()).toBe(0)
  })

  it('says in one sentence that the port is in use', async () => {
    const port = await freePort()
    const first = await startServer({ folder, port })
    await expect(startServer({ folder: join(folder, 'other'), port })).rejects.toThrow(/ended with 1: The port is in use/)
    await first.stop()
  })

  it('says what to do about a damaged database, and leaves it as it is', async () => {
    mkdirSync(join(folder, 'data'))
    writeFileSync(join(folder, 'data', 'bathkeeper.db'), Buffer.alloc(8192, 'not a database '))
    await expect(startServer({ folder: join(folder, 'data'), port: await freePort() })).rejects.toThrow(/The database is damaged.*not touched/s)
  })

  it('looks through the file after a kill, and not after a clean stop, which leaves a mark that serves once', async () => {
    const port = await freePort()
    const file = join(folder, 'bathkeeper.db')
    const marks = (): string[] => readdirSync(folder).filter((name) => name.endsWith('.stopped'))
    await (await startServer({ folder, port })).stop()
    // Only who looks through the whole file comes by this page.
    const database = new Sqlite(file)
    const size = database.exec("create table apart (text); insert into apart values ('a')").pragma('page_size', { simple: true }) as number
    const { page } = database.prepare("select rootpage as page from sqlite_master where name = 'apart'").get() as { page: number }
    database.close()
    await (await startServer({ folder, port })).stop()
    expect(marks()).toHaveLength(1)
    const damaged = readFileSync(file).fill(0xff, (page - 1) * size, page * size)
    writeFileSync(file, damaged)
    await expect(startServer({ folder, port }), 'changed since').rejects.toThrow(/The database is damaged/)
    expect(marks()).toEqual([])
    leaveMark(file)
    const trusting = await startServer({ folder, port })
    expect(marks()).toEqual([])
    await trusting.stop('SIGKILL')
    await expect(startServer({ folder, port }), 'killed').rejects.toThrow(/The database is damaged/)
  })

  it('names a setting that it cannot use', async () => {
    await expect(startServer({ folder, port: 99_999 })).rejects.toThrow(/The setting PORT/)
  })

  it('killed twenty times while three phones push, loses nothing that it has acknowledged and keeps nothing twice', { timeout: 600_000 }, async () => {
    const { acknowledged, lost, twice, unacknowledged } = await killTrials(20)
    console.log(`${acknowledged} entries acknowledged over 20 kills, ${lost} lost, ${twice} twice; ${unacknowledged} had been stored without an answer`)
    expect(acknowledged).toBeGreaterThan(20)
    expect({ lost, twice }).toEqual({ lost: 0, twice: 0 })
  })
})
