import 'temporal-polyfill/global'
import { randomBytes } from 'node:crypto'
import { accessSync, constants, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { createServer as createHttpsServer, type Server as HttpsServer } from 'node:https'
import { fileURLToPath } from 'node:url'
import { serve } from '@hono/node-server'
import pino from 'pino'
import { renderUnicodeCompact } from 'uqr'
import { enrolFragment, shownCode } from '../wire/code.ts'
import { createApp } from './app.ts'
import { leaveMark, takeMark } from './database/clean-stop.ts'
import { voidCodes } from './database/codes.ts'
import { beginEpoch, readFact } from './database/facts.ts'
import { beginRecord } from './database/head.ts'
import { migrate } from './database/migrate.ts'
import { readPeople } from './database/people.ts'
import { postgresDatabase } from './database/postgres.ts'
import { sqliteDatabase } from './database/sqlite.ts'
import { keepTidy } from './housekeeping.ts'
import { StaticFiles } from './http/static-files.ts'
import { lockFolder } from './folder-lock.ts'
import { Metrics } from './metrics.ts'
import { usualLimits, type Parts } from './parts.ts'
import { issueCode } from './people/issue-code.ts'
import { keyOfRecord } from './server-key.ts'
import { databaseFile, keyFile, readSettings } from './settings.ts'
import { keepCertificate } from './tls/keep-certificate.ts'
import { certificateSource, reachOf } from './tls/reach.ts'
import { startProblem, startText } from './words.ts'

const top = fileURLToPath(new URL('../..', import.meta.url))
const firstCodeMs = 24 * 3_600_000
const stopWithinMs = 5_000
/** Headers that come drop by drop are given up by Node itself; a body by the app, which knows how large it may be. */
const patience = { headersTimeout: 15_000, requestTimeout: 180_000, connectionsCheckingInterval: 5_000 } as const

const start = async (): Promise<void> => {
  const settings = readSettings(process.env)
  mkdirSync(settings.folder, { recursive: true })
  accessSync(settings.folder, constants.W_OK)
  const log = pino({ level: settings.logLevel })
  // Several instances over one PostgreSQL may share a folder; over one SQLite file there is one server.
  const lock = settings.databaseUrl ? undefined : lockFolder(settings.folder)
  const file = databaseFile(settings.folder)
  const database = settings.databaseUrl ? postgresDatabase(settings.databaseUrl, (error) => log.error(error)) : sqliteDatabase(file, { isWhole: takeMark(file) })
  await migrate(database.sql, database.dialect)
  const now = (): number => Date.now()
  await database.transact(async (tx) => {
    await beginRecord(tx)
    if ((await readFact(tx, 'epoch')) === undefined) await beginEpoch(tx, { epoch: randomBytes(8).toString('hex'), since: now(), why: 'first' })
  })
  const key = await keyOfRecord(database, keyFile(settings.folder), { mayBeNew: settings.mayHaveNewKey })
  const { version } = JSON.parse(readFileSync(`${top}package.json`, 'utf8')) as { version: string }
  const certificate = certificateSource(settings, now)
  const pair = await certificate?.load()
  const stopping = new AbortController()
  let files: StaticFiles | undefined
  const parts: Parts = {
    database,
    key,
    clock: now,
    random: (bytes) => randomBytes(bytes),
    log,
    metrics: new Metrics(),
    limits: usualLimits,
    trustedProxies: settings.trustedProxies,
    isHttps: pair !== undefined,
    version,
    files: () => (files ??= existsSync(`${top}dist/index.html`) ? new StaticFiles(`${top}dist`) : undefined),
    authorityCertificate: () => certificate?.authorityCertificate(),
    metricsToken: settings.metricsToken,
    stopping: stopping.signal,
  }
  const { fetch } = createApp(parts)
  const server = serve({
    fetch,
    port: settings.port,
    ...(settings.host === undefined ? {} : { hostname: settings.host }),
    ...(pair ? { createServer: createHttpsServer, serverOptions: { ...patience, ...pair } } : { serverOptions: patience }),
  })
  await new Promise<void>((resolve, reject) => {
    server.once('listening', resolve)
    server.once('error', reject)
  })
  const kept =
    certificate && pair &&
    keepCertificate(certificate, {
      first: pair,
      serve: (next) => (server as HttpsServer).setSecureContext({ ...next }),
      report: (error) => log.error({ err: error }, 'certificate'),
    })
  const tidy = keepTidy(database.sql, now, (error) => log.error({ err: error }, 'housekeeping'))
  const stop = (): void => {
    if (stopping.signal.aborted) return
    stopping.abort()
    kept?.stop()
    tidy.stop()
    const forced = setTimeout(() => process.exit(1), stopWithinMs)
    forced.unref()
    const end = async (): Promise<never> => {
      await database.close()
      if (lock) leaveMark(file)
      lock?.release()
      process.exit(0)
    }
    server.close(() => void end())
    if ('closeIdleConnections' in server) server.closeIdleConnections()
  }
  process.on('SIGTERM', stop)
  process.on('SIGINT', stop)
  const bound = server.address()
  const port = typeof bound === 'object' && bound ? bound.port : settings.port
  const { origin, notes } = reachOf({ settings, port, pair, authority: certificate?.authorityCertificate(), now: now() })
  const isClaimed = (await readPeople(database.sql)).length > 0
  if (!isClaimed) await voidCodes(database.sql, ['first'])
  const code = isClaimed ? undefined : await issueCode(database.sql, parts, { purpose: 'first', until: now() + firstCodeMs })
  const address = code ? `${origin}/${enrolFragment(code.long)}` : origin
  console.log(startText({ address, qr: renderUnicodeCompact(address), code: code && shownCode(code.short), certificate: notes, folder: settings.folder }))
}

start().catch((error: unknown) => {
  console.error(startProblem(error))
  process.exit(1)
})
