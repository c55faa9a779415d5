import { spawn, type ChildProcess } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { bundledServer } from './bundled.ts'
import { letIn, Phone } from './phone.ts'

const top = fileURLToPath(new URL('../..', import.meta.url))

export const freePort = async (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => (typeof address === 'object' && address ? resolve(address.port) : reject(new Error('no port'))))
    })
  })

export interface RunningServer {
  process: ChildProcess
  origin: string
  /** What it printed when it started. */
  printed: string
  /** The first code in it, where there is one. */
  code: string | undefined
  stop(signal?: NodeJS.Signals): Promise<number | null>
}

/** The server program on loopback, as people start it; `bundled`: sooner, for what starts it many times. */
export const startServer = async (given: { folder: string; port: number; env?: Record<string, string>; bundled?: boolean }): Promise<RunningServer> => {
  const child = spawn(process.execPath, given.bundled ? [await bundledServer()] : ['--import', 'tsx', 'src/server/main.ts'], {
    cwd: top,
    env: { ...process.env, PORT: String(given.port), HOST: '127.0.0.1', BATHKEEPER_DATA: given.folder, LOG_LEVEL: 'silent', ...given.env },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let printed = ''
  await new Promise<void>((resolve, reject) => {
    const hear = (chunk: Buffer): void => {
      printed += chunk.toString()
      if (printed.includes('The record is kept in')) resolve()
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    child.once('exit', (status) => reject(new Error(`the server ended with ${status}: ${printed}`)))
  })
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve))
  return {
    process: child,
    origin: `http://localhost:${given.port}`,
    printed,
    code: /#enrol=([\w-]+)/.exec(printed)?.[1],
    stop: (signal = 'SIGTERM') => {
      child.kill(signal)
      return ended
    },
  }
}

export interface KillCount {
  acknowledged: number
  lost: number
  twice: number
  /** Entries that were stored although no answer ever said so. */
  unacknowledged: number
}

const passphrase = 'silver nitrate in the dark'
const phones = 3

/** Pushes from several phones at once, kills the server in the middle, starts it again, and counts what is there. */
export const killTrials = async (trials: number): Promise<KillCount> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-kill-'))
  const port = await freePort()
  const ask = (request: Request): Promise<Response> => fetch(request)
  const acknowledged = new Set<string>()
  let server = await startServer({ folder, port, bundled: true })
  try {
    const first = new Phone(ask, server.origin)
    const { person } = await first.enrol(server.code!, { name: 'Helena Sobral', passphrase })
    const supervisor = { phone: first, person: person!, passphrase }
    const all = [first]
    while (all.length < phones) all.push(await letIn(supervisor))
    const unsent = new Map(all.map((phone) => [phone, [] as ReturnType<Phone['entry']>[]]))
    const pushOnce = async (phone: Phone): Promise<void> => {
      const { acks, lastSeq, error } = await phone.push(unsent.get(phone)!)
      if (error) throw new Error(`push: ${error.code}`)
      for (const { id } of acks) acknowledged.add(id)
      unsent.set(phone, unsent.get(phone)!.filter(({ entry }) => entry.seq > lastSeq))
    }
    for (let trial = 0; trial < trials; trial++) {
      let isKilled = false
      const { process: program } = server
      const killAt = setTimeout(() => {
        isKilled = true
        program.kill('SIGKILL')
      }, 20 + (randomBytes(1)[0]! / 255) * 250)
      const sending = async (phone: Phone): Promise<void> => {
        while (!isKilled) {
          if (!unsent.get(phone)!.length) unsent.set(phone, Array.from({ length: 1 + (randomBytes(1)[0]! % 30) }, () => phone.entry()))
          try {
            await pushOnce(phone)
          } catch (error) {
            // `fetch` fails with a TypeError: the answer was lost, and everything is sent again after the restart.
            if (!(error instanceof TypeError)) throw error
          }
        }
      }
      await Promise.all(all.map(sending))
      clearTimeout(killAt)
      await server.stop('SIGKILL')
      server = await startServer({ folder, port, bundled: true })
    }
    const ids = new Set((await first.pullAll()).map(({ entry }) => entry.id as string))
    const lost = [...acknowledged].filter((id) => !ids.has(id)).length
    const unacknowledged = [...ids].filter((id) => !acknowledged.has(id)).length
    for (const phone of all) if (unsent.get(phone)!.length) await pushOnce(phone)
    const pulled = (await first.pullAll()).map(({ entry }) => entry.id as string)
    return { acknowledged: acknowledged.size, lost, twice: pulled.length - new Set(pulled).size, unacknowledged }
  } finally {
    await server.stop('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
}
