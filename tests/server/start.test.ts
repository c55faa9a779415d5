import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
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
