import { execFileSync, spawn, type ChildProcess } from 'node:child_process'
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import { freePort } from '../server/kill.ts'

/** Where Debian, and then others, keep the programs of a PostgreSQL server. */
const binFolder = (): string | undefined => {
  const debian = '/usr/lib/postgresql'
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)).map((version) => join(debian, version, 'bin')) : []
  return [...versions, '/usr/local/pgsql/bin', '/usr/local/bin', '/usr/bin', '/opt/homebrew/bin'].find((folder) => existsSync(join(folder, 'initdb')))
}

export const bin = binFolder()
if (!bin) console.log('\n*** SKIPPED: no PostgreSQL on this machine, so nothing was held against it. Debian: apt-get install postgresql ***\n')

const idOf = (flag: '-u' | '-g'): number => Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }))

/** PostgreSQL refuses to run as root; and it is to end with the tests, however they end. */
const asItself = (program: string, args: readonly string[]): [string, string[]] => {
  if (process.platform !== 'linux') return [program, [...args]]
  const user = process.getuid?.() === 0 ? ['--reuid=postgres', '--regid=postgres', '--clear-groups'] : []
  return ['setpriv', [...user, '--pdeathsig', 'INT', program, ...args]]
}

const answers = async (url: string): Promise<boolean> => {
  const client = new pg.Client({ connectionString: url })
  try {
    await client.connect()
    return true
  } catch {
    return false
  } finally {
    await client.end().catch(() => undefined)
  }
}

/** A real PostgreSQL on loopback, with its files in a temporary folder. */
export class Postgres {
  #made = 0
  private constructor(
    private readonly folder: string,
    private readonly server: ChildProcess,
    private readonly port: number,
  ) {}

  static async start({ isDurable = false } = {}): Promise<Postgres> {
    const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-postgres-'))
    if (process.getuid?.() === 0) chownSync(folder, idOf('-u'), idOf('-g'))
    const files = join(folder, 'files')
    const [initdb, args] = asItself(join(bin!, 'initdb'), ['-D', files, '-U', 'bathkeeper', '--auth=trust', '-E', 'UTF8', '--locale=C', '--no-sync'])
    execFileSync(initdb, args, { stdio: 'pipe', cwd: folder })
    const port = await freePort()
    // Nobody cuts the power in a test, so nothing is forced to the disk: a new database for each takes a fifth of the time.
    const careless = isDurable ? [] : ['fsync=off', 'full_page_writes=off']
    const settings = ['listen_addresses=127.0.0.1', 'shared_buffers=32MB', ...careless].flatMap((it) => ['-c', it])
    const [postgres, more] = asItself(join(bin!, 'postgres'), ['-D', files, '-p', String(port), '-k', folder, ...settings])
    const server = spawn(postgres, more, { stdio: ['ignore', 'ignore', 'pipe'], cwd: folder })
    let said = ''
    server.stderr.on('data', (chunk: Buffer) => (said += chunk.toString()))
    const it = new Postgres(folder, server, port)
    for (let tries = 0; !(await answers(it.url('postgres'))); tries++) {
      if (tries > 100 || server.exitCode !== null) throw new Error(`PostgreSQL did not start: ${said}`)
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
    return it
  }

  url(database: string): string {
    return `postgres://bathkeeper@127.0.0.1:${this.port}/${database}`
  }

  /** An empty database of its own, and its address. */
  async newDatabase(): Promise<string> {
    const name = `lab_${++this.#made}`
    const client = new pg.Client({ connectionString: this.url('postgres') })
    await client.connect()
    await client.query(`create database ${name}`)
    await client.end()
    return this.url(name)
  }

  async stop(): Promise<void> {
    const ended = new Promise((resolve) => this.server.once('exit', resolve))
    // INT is its fast stop: open connections are ended, nothing is waited for.
    this.server.kill('SIGINT')
    await ended
    rmSync(this.folder, { recursive: true, force: true })
  }
}
