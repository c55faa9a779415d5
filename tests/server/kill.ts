import { spawn, type ChildProcess } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Phone } from './phone.ts'

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

/** The server program as people start it, on loopback. */
export const startServer = async (given: { folder: string; port: number; env?: Record<string, string> }): Promise<RunningServer> => {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/server/main.ts'], {
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
}

/** Pushes from several phones at once, kills the server in the middle, starts it again, and counts what is there. */
export const killTrials = async (trials: number): Promise<KillCount> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-kill-'))
  const port = await freePort()
  const ask = (request: Request): Promise<Response> => fetch(request)
  const acknowledged = new Set<string>()
  let server = await startServer({ folder, port })
  try {
    const origin = server.origin
    const phone = new Phone(ask, origin)
    await phone.enrol(server.code!, { name: 'Helena Sobral', passphrase: 'silver nitrate in the dark' })
    let unsent: ReturnType<Phone['entry']>[] = []
    for (let trial = 0; trial < trials; trial++) {
      let killed = false
      const killAt = setTimeout(() => {
        killed = true
        server.process.kill('SIGKILL')
      }, 30 + (randomBytes(1)[0]! / 255) * 250)
      while (!killed) {
        if (unsent.length === 0) unsent = Array.from({ length: 20 }, () => phone.entry())
        try {
          const answer = await phone.push(unsent)
          for (const { id } of answer.acks) acknowledged.add(id)
          const { lastSeq } = answer
          unsent = unsent.filter(({ entry }) => entry.seq > lastSeq)
        } catch (error) {
          if (!killed && !(error instanceof TypeError)) throw error
          // The answer was lost; everything is sent again after the restart.
        }
      }
      clearTimeout(killAt)
      await server.stop('SIGKILL')
      server = await startServer({ folder, port })
    }
    if (unsent.length) for (const { id } of (await phone.push(unsent)).acks) acknowledged.add(id)
    const ids = (await phone.pullAll()).map(({ entry }) => entry.id as string)
    const there = new Set(ids)
    return { acknowledged: acknowledged.size, lost: [...acknowledged].filter((id) => !there.has(id)).length, twice: ids.length - there.size }
  } finally {
    await server.stop('SIGKILL')
    rmSync(folder, { recursive: true, force: true })
  }
}
