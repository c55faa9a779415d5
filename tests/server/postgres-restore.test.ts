import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { usePgDump } from '../../src/server/backup/words.ts'
import { bin, Postgres } from '../contract/postgres.ts'
import { freePort, startServer, type RunningServer } from './kill.ts'
import { letIn, Phone, type Supervisor } from './phone.ts'

const top = fileURLToPath(new URL('../..', import.meta.url))
const passphrase = 'silver nitrate in the dark'

// By the lines that the backup command prints, with the tools of the PostgreSQL that is installed here.
describe.skipIf(!bin)('a record in PostgreSQL, dumped while servers run and put back', { timeout: 240_000 }, () => {
  let postgres: Postgres
  let folder: string
  let url: string
  const running: RunningServer[] = []
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'bathkeeper-pg-'))
    postgres = await Postgres.start()
    url = await postgres.newDatabase()
  })
  afterAll(async () => {
    for (const server of running) await server.stop('SIGKILL')
    await postgres?.stop()
    rmSync(folder, { recursive: true, force: true })
  })

  const env = (): Record<string, string> => ({ DATABASE_URL: url, BATHKEEPER_DATA: join(folder, 'data') })
  const start = async (port: number): Promise<RunningServer> => {
    const server = await startServer({ folder: join(folder, 'data'), port, env: { DATABASE_URL: url } })
    running.push(server)
    return server
  }
  const command = (name: string, ...words: string[]): { status: number | null; text: string } => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', `src/terminal/${name}.ts`, ...words], { cwd: top, encoding: 'utf8', env: { ...process.env, ...env() } })
    return { status, text: stdout + stderr }
  }
  /** The line as it is printed, run by a shell in the folder of the dump, with PostgreSQL's programs found. */
  const asPrinted = (line: string): void => {
    execFileSync('sh', ['-c', line], { cwd: folder, stdio: 'pipe', env: { ...process.env, ...env(), PATH: `${bin}:${process.env['PATH']}` } })
  }
  const dumpLine = /^ {2}(pg_dump .*)$/m.exec(usePgDump)![1]!
  const restoreLine = /(pg_restore [^,]*),/.exec(usePgDump)![1]!

  it('goes on in a new epoch, and phones bring what came after; nothing of it is lost', async () => {
    const [port, otherPort] = [await freePort(), await freePort()]
    const one = await start(port)
    const two = await start(otherPort)
    const first = new Phone(fetch, one.origin)
    // Of the codes that servers print before there is a supervisor, the newest is good.
    const { person } = await first.enrol(two.code!, { name: 'Helena Sobral', passphrase })
    const supervisor: Supervisor = { phone: first, person: person!, passphrase }
    const other = await letIn(supervisor)
    const sent = { first: [first.entry(), first.entry()], other: [other.entry()] }
    await first.push(sent.first)
    await other.push(sent.other)

    expect(command('backup', join(folder, 'x.db'))).toEqual({ status: 2, text: expect.stringContaining(dumpLine) as string })
    // Phones go on sending while the dump is made.
    const late = Array.from({ length: 40 }, () => first.entry())
    const sending = (async () => {
      for (const entry of late) await first.push([entry])
    })()
    asPrinted(dumpLine)
    await sending
    sent.first.push(...late)
    const lateLetIn = await letIn(supervisor)
    const lost = [lateLetIn.entry()]
    await lateLetIn.push(lost)

    expect(command('restore')).toEqual({ status: 2, text: expect.stringMatching(/A server is connected[^]*Nothing was touched/) as string })
    expect([await one.stop(), await two.stop()]).toEqual([0, 0])
    const client = new pg.Client({ connectionString: url })
    await client.connect()
    await client.query("update entries set body = 'damaged'")
    await client.end()
    expect(command('verify-record')).toEqual({ status: 1, text: expect.stringContaining('First bad link') as string })
    asPrinted(restoreLine)
    const restored = command('restore')
    expect(restored.status, restored.text).toBe(0)
    expect(restored.text).toMatch(/The record goes on from entry \d+ in epoch [0-9a-f]{16}/)
    expect(command('verify-record').status).toBe(0)

    const again = await start(port)
    expect(again.code).toBeUndefined()
    for (const [phone, entries] of [[first, sent.first], [other, sent.other]] as const) {
      const refused = await phone.push([entries.at(-1)!])
      expect(refused.error).toMatchObject({ code: 'epoch' })
      phone.epoch = refused.head.epoch
      // One that the server has goes along: an acknowledgement costs nothing.
      expect((await phone.push(entries.slice(Math.max(0, refused.lastSeq - 1)))).error ?? null).toBeNull()
    }
    // Let in after the dump was made: the server does not know it, and knows its own receipt.
    expect((await lateLetIn.send('GET', '/api/v1/me')).status).toBe(401)
    const pulled = (await first.pullAll()).map(({ entry }) => entry.id as string)
    expect(new Set(pulled)).toEqual(new Set([...sent.first, ...sent.other].map(({ entry }) => entry.id)))
    expect(pulled).toHaveLength(sent.first.length + sent.other.length)
    expect(await again.stop()).toBe(0)
    expect(command('verify-record').status).toBe(0)
  })
})
