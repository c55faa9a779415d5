import { randomBytes } from 'node:crypto'
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pino from 'pino'
import { noLocks, type Locks } from '../../src/device/locks.ts'
import type { News } from '../../src/device/news.ts'
import { openPhone, type Phone } from '../../src/device/open-phone.ts'
import type { Store } from '../../src/device/store.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { createApp } from '../../src/server/app.ts'
import type { Database } from '../../src/server/database/database.ts'
import { setDeviceState } from '../../src/server/database/devices.ts'
import { beginEpoch } from '../../src/server/database/facts.ts'
import { beginRecord } from '../../src/server/database/head.ts'
import { migrate } from '../../src/server/database/migrate.ts'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { newPrivateKey, serverKey, type ServerKey } from '../../src/server/keys.ts'
import { Metrics } from '../../src/server/metrics.ts'
import { usualLimits } from '../../src/server/parts.ts'
import { issueCode } from '../../src/server/people/issue-code.ts'
import type { Clock } from '../../src/device/clock.ts'
import { HandClock } from './phone.ts'

type Random = (bytes: number) => Uint8Array

/** The real server over a real file, without a port: it can be stopped, backed up and put back. */
export class Laboratory {
  readonly folder = mkdtempSync(join(tmpdir(), 'bathkeeper-lab-'))
  readonly key: ServerKey = serverKey(newPrivateKey())
  database!: Database
  #app!: ReturnType<typeof createApp>
  #generation = 0
  #stopping = new AbortController()

  private constructor(
    readonly clock: { now: number },
    readonly random: Random,
  ) {}

  static async open(clock: { now: number } = new HandClock(), random: Random = (bytes) => randomBytes(bytes)): Promise<Laboratory> {
    const laboratory = new Laboratory(clock, random)
    await laboratory.#start()
    return laboratory
  }

  get file(): string {
    return join(this.folder, `record-${this.#generation}.sqlite`)
  }

  async #start(): Promise<void> {
    this.database = sqliteDatabase(this.file)
    await migrate(this.database.sql, 'sqlite')
    await this.database.transact(async (tx) => {
      await beginRecord(tx)
      const begun = await tx.selectFrom('epochs').selectAll().executeTakeFirst()
      if (!begun) await beginEpoch(tx, { epoch: this.#hex(8), since: this.clock.now, why: 'first' })
    })
    this.#stopping = new AbortController()
    const generous = { burst: 1e9, perSecond: 1e9 }
    this.#app = createApp({
      database: this.database, key: this.key, clock: () => this.clock.now, random: this.random, log: pino({ level: 'silent' }), metrics: new Metrics(),
      limits: { ...usualLimits, device: generous, stranger: generous, codeTries: generous }, trustedProxies: [], isHttps: false, version: 'test',
      files: () => undefined, authorityCertificate: () => undefined, metricsToken: undefined, stopping: this.#stopping.signal,
    })
  }

  #hex(bytes: number): string {
    return Buffer.from(this.random(bytes)).toString('hex')
  }

  /** As the browser's `fetch`, which says how long a body is. */
  fetch = async (path: string, init: RequestInit): Promise<Response> => {
    const headers = new Headers(init.headers)
    if (init.body instanceof Uint8Array) headers.set('Content-Length', String(init.body.byteLength))
    return this.#app.request(path, { ...init, headers })
  }

  /** A device that a supervisor has let in. */
  async letIn(phone: Phone, name = 'Phone'): Promise<void> {
    const code = await this.code()
    const enrolled = await phone.enrolment.enrol({ code, name })
    if (!enrolled.ok) throw new Error(enrolled.problem.code)
    await this.confirm(enrolled.receipt.dev)
    await phone.enrolment.isConfirmed()
  }

  async code(): Promise<string> {
    return (await issueCode(this.database.sql, { key: this.key, random: this.random }, { purpose: 'device', until: this.clock.now + 600_000 })).long
  }

  confirm(dev: string): Promise<void> {
    return setDeviceState(this.database.sql, dev, 'enrolled')
  }

  async restart(): Promise<void> {
    await this.#stop()
    await this.#start()
  }

  async backUp(): Promise<string> {
    await this.restart()
    const copy = join(this.folder, `backup-${this.#hex(4)}.sqlite`)
    await this.#stop()
    copyFileSync(this.file, copy)
    await this.#start()
    return copy
  }

  /** Puts a backup back; `announced` as the restore command does it, otherwise as a person who copies a file. */
  async restore(copy: string, announced: boolean): Promise<void> {
    await this.#stop()
    this.#generation++
    copyFileSync(copy, this.file)
    await this.#start()
    if (announced) await this.database.transact((tx) => beginEpoch(tx, { epoch: this.#hex(8), since: this.clock.now, why: 'restored' }))
  }

  entries(): Promise<{ id: string; dev: string; seq: number; status: string; body: string; gseq: number }[]> {
    return this.database.sql.selectFrom('entries').select(['id', 'dev', 'seq', 'status', 'body', 'gseq']).orderBy('gseq').execute()
  }

  async #stop(): Promise<void> {
    this.#stopping.abort()
    await this.database.close()
  }

  async close(): Promise<void> {
    await this.#stop()
    rmSync(this.folder, { recursive: true, force: true })
  }
}

/** Work that a test lets happen when it wants to, in the order of its time. */
export class HandTimers {
  #now = 0
  #waiting: { at: number; work: () => void }[] = []
  after = (milliseconds: number, work: () => void): (() => void) => {
    const one = { at: this.#now + milliseconds, work }
    this.#waiting.push(one)
    return () => void (this.#waiting = this.#waiting.filter((it) => it !== one))
  }
  get delays(): number[] {
    return this.#waiting.map(({ at }) => at - this.#now).sort((a, b) => a - b)
  }
  pass(milliseconds: number): void {
    const until = this.#now + milliseconds
    for (;;) {
      const next = this.#waiting.filter(({ at }) => at <= until).sort((a, b) => a.at - b.at)[0]
      if (!next) break
      this.#now = next.at
      this.#waiting = this.#waiting.filter((it) => it !== next)
      next.work()
    }
    this.#now = until
  }
}

/** Tells nobody: a phone with one tab. */
export const noNews = (): News => ({ tell: () => undefined, listen: () => () => undefined, close: () => undefined })

/** News between the tabs of one phone. */
export class TabNews {
  #listeners = new Map<News, Set<(ids: EntryId[]) => void>>()
  tab(): News {
    const mine = new Set<(ids: EntryId[]) => void>()
    const news: News = {
      tell: (ids) => {
        for (const [tab, listeners] of this.#listeners) if (tab !== news) for (const listener of listeners) listener([...ids])
      },
      listen: (listener) => {
        mine.add(listener)
        return () => void mine.delete(listener)
      },
      close: () => void this.#listeners.delete(news),
    }
    this.#listeners.set(news, mine)
    return news
  }
}

export interface PhoneGiven {
  store: Store
  fetch: (path: string, init: RequestInit) => Promise<Response>
  clock?: Clock
  timers?: HandTimers
  news?: News
  locks?: Locks
  chance?: () => number
  randomBytes?: (count: number) => Uint8Array<ArrayBuffer>
  onFault?: (thrown: unknown) => void
}

export const testPhone = (given: PhoneGiven): Phone =>
  openPhone({
    store: given.store,
    clock: given.clock ?? new HandClock(),
    locks: given.locks ?? noLocks,
    news: given.news ?? noNews(),
    fetch: given.fetch,
    randomBytes: given.randomBytes ?? ((count) => crypto.getRandomValues(new Uint8Array(count))),
    chance: given.chance ?? (() => 0.5),
    after: (given.timers ?? new HandTimers()).after,
    about: () => Promise.resolve({ persisted: true, app: 'test' }),
    onFault:
      given.onFault ??
      ((thrown) => {
        throw thrown
      }),
  })
