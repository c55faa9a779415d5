import { randomBytes } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pino from 'pino'
import { createApp } from '../../src/server/app.ts'
import type { Database } from '../../src/server/database/database.ts'
import { beginEpoch } from '../../src/server/database/facts.ts'
import { beginRecord } from '../../src/server/database/head.ts'
import { migrate } from '../../src/server/database/migrate.ts'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { newPrivateKey, serverKey } from '../../src/server/keys.ts'
import { Metrics } from '../../src/server/metrics.ts'
import { usualLimits, type Limits, type Parts } from '../../src/server/parts.ts'
import { issueCode } from '../../src/server/people/issue-code.ts'
import { letIn, Phone, proofOf, type Ask, type Supervisor } from './phone.ts'

export interface TestServer {
  ask: Ask
  parts: Parts
  /** Its database file, where it is SQLite, and its private key. */
  file: string
  privatePem: string
  /** Moves the server's clock on, in ms. */
  later(ms: number): void
  firstCode(): Promise<string>
  /** The first supervisor's device, enrolled, and who that is. */
  first(): Promise<Supervisor>
  /** A further device, let in by the supervisor. */
  another(supervisor: Supervisor): Promise<Phone>
  prove(supervisor: Supervisor): Promise<string>
  close(): Promise<void>
}

const passphrase = 'silver nitrate in the dark'

/** The real app over a real database, without a port; `beside` another instance over the same database, with its key. */
export const openServer = async (given: { database?: Database; limits?: Partial<Limits>; beside?: TestServer } = {}): Promise<TestServer> => {
  const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-server-'))
  const file = join(folder, 'bathkeeper.db')
  const database = given.database ?? sqliteDatabase(file)
  const privateKey = newPrivateKey()
  await migrate(database.sql, database.dialect)
  await database.transact(async (tx) => {
    await beginRecord(tx)
    if (!given.beside) await beginEpoch(tx, { epoch: randomBytes(8).toString('hex'), since: Date.now(), why: 'first' })
  })
  let moved = 0
  const stopping = new AbortController()
  const parts: Parts = {
    database,
    key: given.beside?.parts.key ?? serverKey(privateKey),
    clock: () => Date.now() + moved,
    random: (bytes) => randomBytes(bytes),
    log: pino({ level: 'silent' }),
    metrics: new Metrics(),
    limits: { ...usualLimits, device: { burst: 10_000, perSecond: 1_000 }, ...given.limits },
    trustedProxies: [],
    isHttps: false,
    version: 'test',
    files: () => undefined,
    authorityCertificate: () => undefined,
    metricsToken: 'a token of the tests',
    stopping: stopping.signal,
  }
  const app = createApp(parts)
  const ask: Ask = (request) => app.request(request)
  const firstCode = async (): Promise<string> => (await issueCode(database.sql, parts, { purpose: 'first', until: parts.clock() + 600_000 })).long
  return {
    ask,
    parts,
    file,
    privatePem: privateKey.export({ format: 'pem', type: 'pkcs8' }).toString(),
    later: (ms) => {
      moved += ms
    },
    firstCode,
    first: async () => {
      const phone = new Phone(ask)
      const { person } = await phone.enrol(await firstCode(), { name: 'Helena Sobral', passphrase })
      return { phone, person: person!, passphrase }
    },
    another: letIn,
    prove: proofOf,
    close: async () => {
      stopping.abort()
      await database.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
