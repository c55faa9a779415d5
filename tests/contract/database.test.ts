import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { insertCodes } from '../../src/server/database/codes.ts'
import type { Database } from '../../src/server/database/database.ts'
import { endedByWipe, readEpochs, beginEpoch } from '../../src/server/database/facts.ts'
import { logBefore, note } from '../../src/server/database/log.ts'
import { migrate } from '../../src/server/database/migrate.ts'
import { spendNonce } from '../../src/server/database/nonces.ts'
import { isServed, postgresDatabase } from '../../src/server/database/postgres.ts'
import { sqliteDatabase } from '../../src/server/database/sqlite.ts'
import { tidyUp } from '../../src/server/housekeeping.ts'
import { sha256 } from '../../src/server/keys.ts'
import { verifyRecord } from '../../src/server/verify/verify-record.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { chainStart, headText, linkText } from '../../src/wire/signed-texts.ts'
import type { LiveEvent } from '../../src/wire/live.ts'
import { openServer, type TestServer } from '../server/server.ts'
import { bin, Postgres } from './postgres.ts'

/** Opens databases of one kind; `open` gives a way to open the same new database again and again, as further instances do. */
interface Kind {
  name: string
  begin(): Promise<void>
  end(): Promise<void>
  open(): Promise<() => Database>
}

const sqlite = (): Kind => {
  let folder = ''
  let made = 0
  return {
    name: 'SQLite',
    begin: () => Promise.resolve(void (folder = mkdtempSync(join(tmpdir(), 'bathkeeper-contract-')))),
    end: () => Promise.resolve(rmSync(folder, { recursive: true, force: true })),
    open: () => {
      const file = join(folder, `${++made}.db`)
      return Promise.resolve(() => sqliteDatabase(file))
    },
  }
}

let server: Postgres | undefined
beforeAll(async () => {
  if (bin) server = await Postgres.start()
})
afterAll(() => server?.stop())

const postgres: Kind = {
  name: 'PostgreSQL',
  begin: () => Promise.resolve(),
  end: () => Promise.resolve(),
  open: async () => {
    const url = await server!.newDatabase()
    return () => postgresDatabase(url, () => undefined)
  },
}

describe.each([sqlite(), ...(bin ? [postgres] : [])])('the record in $name', (kind) => {
  let openAgain: () => Database
  let laboratory: TestServer
  beforeAll(() => kind.begin())
  afterAll(() => kind.end())
  beforeEach(async () => {
    openAgain = await kind.open()
    laboratory = await openServer({ database: openAgain() })
  })
  afterEach(() => laboratory.close())

  it('keeps what a phone sends in its order, gives it to another phone, and acknowledges each entry by name', async () => {
    const supervisor = await laboratory.first()
    const other = await laboratory.another(supervisor)
    const entries = Array.from({ length: 450 }, () => supervisor.phone.entry())
    for (let from = 0; from < entries.length; from += 200) {
      const part = entries.slice(from, from + 200)
      const answer = await supervisor.phone.push(part)
      expect(answer.error).toBeUndefined()
      expect(answer.acks.map(({ id }) => id)).toEqual(part.map(({ entry }) => entry.id))
    }
    expect((await other.pullAll()).map(({ entry }) => entry.id)).toEqual(entries.map(({ entry }) => entry.id))
  })

  it('writes together what waits for its lock, in the order in which it came; a fault of one touches no other', async () => {
    const { database } = laboratory.parts
    const say = (detail: string) =>
      database.transactInTurn(async (tx) => {
        await note(tx, 1, 'chain', { detail })
        if (detail === 'three') throw new Error('a fault')
        return detail
      })
    const outcomes = await Promise.allSettled(['one', 'two', 'three', 'four'].map(say))
    expect(outcomes.map((it) => (it.status === 'fulfilled' ? it.value : String(it.reason)))).toEqual(['one', 'two', 'Error: a fault', 'four'])
    const said = await database.sql.selectFrom('log').select('detail').where('what', '=', 'chain').orderBy('n').execute()
    expect(said.map(({ detail }) => detail)).toEqual(['one', 'two', 'four'])
  })

  it('takes an entry sent twice once, and acknowledges it both times, even at the same moment', async () => {
    const { phone } = await laboratory.first()
    const entries = [phone.entry(), phone.entry()]
    const answers = [await phone.push(entries), ...(await Promise.all([1, 2, 3].map(() => phone.push(entries))))]
    for (const { acks } of answers) expect(acks).toEqual(answers[0]!.acks)
    expect(await phone.pullAll()).toHaveLength(2)
  })

  it('stops at a gap, keeps the good beginning, and says what it wants next', async () => {
    const { phone } = await laboratory.first()
    const [one, , three] = [phone.entry(), phone.entry(), phone.entry()]
    const answer = await phone.push([one, three])
    expect(answer.error).toMatchObject({ code: 'gap', want: 2 })
    expect(answer.acks.map(({ id }) => id)).toEqual([one.entry.id])
    expect(await phone.pullAll()).toHaveLength(1)
  })

  it('sets a device aside that has written two histories, and keeps the second', async () => {
    const { phone } = await laboratory.first()
    const [seq, h] = [phone.seq, phone.h]
    await phone.push([phone.entry()])
    ;[phone.seq, phone.h] = [seq, h]
    const other = phone.entry('note', { text: 'another history', about: 'general' })
    for (let times = 0; times < 2; times++) expect((await phone.push([other])).error).toMatchObject({ code: 'fork' })
    const { sql } = laboratory.parts.database
    expect(await sql.selectFrom('devices').select('state').execute()).toEqual([{ state: 'quarantined' }])
    expect(await sql.selectFrom('asides').select(['h', 'why']).execute()).toEqual([{ h: other.h, why: 'fork' }])
  })

  it('keeps an entry that does not fit its kind, marked, so that it blocks nothing behind it', async () => {
    const { phone } = await laboratory.first()
    const answer = await phone.push([phone.entry('note', { text: '' }), phone.entry('soundTrack', { anything: 1 }), phone.entry()])
    expect(answer.acks).toHaveLength(3)
    expect((await phone.pullAll()).map(({ status }) => status)).toEqual(['invalid', 'opaque', 'valid'])
  })

  it('keeps a plan whose name or beginning a column could not hold as an invalid entry, which blocks nothing behind it', async () => {
    const { phone, person } = await laboratory.first()
    const lab = demoLab()
    const plan = (data: Record<string, unknown>) => phone.entry('plan', data, person)
    const answer = await phone.push([
      plan({ plan: { ...lab, name: 'A\u0000B' }, effectiveFrom: 1 }), plan({ plan: lab, effectiveFrom: 1.5 }),
      phone.entry('note', { text: 'with \u0000 in it', about: 'general' }), plan({ plan: lab, effectiveFrom: 1 }),
    ])
    expect([answer.error, answer.acks.length]).toEqual([undefined, 4])
    expect((await phone.pullAll()).map(({ status, entry }) => `${status} ${String(entry['kind'])}`)).toEqual(['invalid plan', 'invalid plan', 'valid note', 'valid plan'])
    expect(await laboratory.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: true, entries: 4 })
  })

  it('keeps apart what a device sends after it was taken out', async () => {
    const supervisor = await laboratory.first()
    const lost = await laboratory.another(supervisor)
    await lost.push([lost.entry()])
    const proof = await laboratory.prove(supervisor)
    expect((await supervisor.phone.send('POST', `/api/v1/devices/${lost.dev}/end`, { state: 'revoked', why: 'lost' }, supervisor.phone.presence(proof))).status).toBe(200)
    expect((await lost.push([lost.entry()])).error).toMatchObject({ code: 'revoked' })
    expect((await supervisor.phone.pullAll()).map(({ status }) => status)).toEqual(['valid', 'quarantined'])
  })

  it('links every entry into one chain whose end the server signs, and which a walk finds whole', async () => {
    const supervisor = await laboratory.first()
    const other = await laboratory.another(supervisor)
    await supervisor.phone.push([supervisor.phone.entry('plan', { plan: demoLab(), effectiveFrom: Date.now() })])
    await other.push([other.entry(), other.entry()])
    const { head } = await supervisor.phone.push([supervisor.phone.entry()])
    let sh = chainStart
    for (const it of await other.pullAll()) expect(it.sh).toBe((sh = sha256(linkText({ before: sh, gseq: it.gseq, h: it.h, recvAt: it.recvAt }))))
    expect(head.sh).toBe(sh)
    expect(laboratory.parts.key.verify(headText(head), head.sig)).toBe(true)
    expect(await laboratory.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: true, entries: 4, devices: 2, gseq: head.gseq })
    await laboratory.parts.database.sql.updateTable('entries').set({ recv_at: 1 }).where('gseq', '=', 2).execute()
    expect(await laboratory.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: false, fault: 'link', gseq: 2 })
  })

  it('keeps a photo as the bytes it was', async () => {
    const { phone } = await laboratory.first()
    const bytes = Buffer.from([0xff, 0xd8, 0xff, 0, 1, 2, 0x27, 0x5c, 0, 255])
    const entry = phone.entry('note', { text: 'with a photo', about: 'general' })
    await phone.push([entry])
    const { sql } = laboratory.parts.database
    await sql.insertInto('blobs').values({ sha256: sha256(bytes), bytes: bytes.length, type: 'image/jpeg', data: bytes, dev: phone.dev, recv_at: 1 }).execute()
    const answer = await phone.send('GET', `/api/v1/blob/${sha256(bytes)}`)
    expect(Buffer.from(await answer.arrayBuffer())).toEqual(bytes)
  })

  it('keeps all of a transaction or nothing', async () => {
    const { database } = laboratory.parts
    const failing = database.transact(async (tx) => {
      await note(tx, 1, 'started', { detail: 'must not stay' })
      throw new Error('in the middle')
    })
    await expect(failing).rejects.toThrow('in the middle')
    expect(await logBefore(database.sql, undefined)).toEqual([])
    await Promise.all(Array.from({ length: 12 }, (_, place) => database.transact((tx) => note(tx, place, 'started'))))
    expect((await logBefore(database.sql, undefined)).map(({ n }) => n)).toEqual([12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1])
  })

  it('gives a nonce away once, however many ask at the same moment', async () => {
    const { sql } = laboratory.parts.database
    const spent = await Promise.all(Array.from({ length: 8 }, () => spendNonce(sql, 'a nonce', 1)))
    expect(spent.filter(Boolean)).toHaveLength(1)
  })

  it('forgets nonces and codes that have run out, a code only a day later, and nothing else', async () => {
    const { sql } = laboratory.parts.database
    const { phone } = await laboratory.first()
    await phone.push([phone.entry()])
    const now = Date.now()
    await spendNonce(sql, 'old', now - 1)
    await spendNonce(sql, 'young', now + 60_000)
    const code = { purpose: 'device' as const, pair: '', person: null, used_at: null, used_by: null }
    await insertCodes(sql, [{ ...code, hash: 'yesterday', until: now - 86_400_001 }, { ...code, hash: 'today', until: now - 1 }])
    await tidyUp(sql, now)
    const nonces = (await sql.selectFrom('nonces').select('nonce').execute()).map(({ nonce }) => nonce)
    expect([nonces.includes('old'), nonces.includes('young')]).toEqual([false, true])
    const codes = (await sql.selectFrom('codes').select('hash').execute()).map(({ hash }) => hash)
    expect([codes.includes('yesterday'), codes.includes('today')]).toEqual([false, true])
    expect(await phone.pullAll()).toHaveLength(1)
  })

  it('knows its epochs in their order, and which were ended by a wipe', async () => {
    const { database } = laboratory.parts
    const first = (await readEpochs(database.sql))[0]!.epoch
    await database.transact((tx) => beginEpoch(tx, { epoch: 'second', since: Date.now() + 1, why: 'restored' }))
    await database.transact((tx) => beginEpoch(tx, { epoch: 'third', since: Date.now() + 2, why: 'wiped' }))
    expect((await readEpochs(database.sql)).map(({ why }) => why)).toEqual(['first', 'restored', 'wiped'])
    expect([await endedByWipe(database.sql, first), await endedByWipe(database.sql, 'third')]).toEqual([true, false])
  })

  it('is brought up to date once, and again without effect', async () => {
    const { phone } = await laboratory.first()
    await phone.push([phone.entry()])
    await migrate(laboratory.parts.database.sql, laboratory.parts.database.dialect)
    expect(await phone.pullAll()).toHaveLength(1)
  })
})

describe.skipIf(!bin)('two instances over one PostgreSQL', () => {
  let one: TestServer
  let two: TestServer
  beforeEach(async () => {
    const url = await server!.newDatabase()
    one = await openServer({ database: postgresDatabase(url, () => undefined) })
    two = await openServer({ database: postgresDatabase(url, () => undefined), beside: one })
  })
  afterEach(async () => {
    await two.close()
    await one.close()
  })

  const within = <T>(ms: number, what: string, promise: Promise<T>): Promise<T> =>
    Promise.race([promise, new Promise<never>((_, reject) => setTimeout(() => reject(new Error(`${what}: not within ${ms} ms`)), ms).unref())])

  it('lose nothing while phones push through both at once, and one that pulls all the while misses nothing', { timeout: 60_000 }, async () => {
    const supervisor = await one.first()
    const phones = [supervisor.phone]
    for (const instance of [one, two, one, two, two]) phones.push(await instance.another(supervisor))
    const reader = await two.another(supervisor)
    let isDone = false
    const seen: string[] = []
    const pulling = (async () => {
      let after = 0
      for (let last = false; ; ) {
        const answer = await reader.send('GET', `/api/v1/pull?epoch=${reader.epoch}&after=${after}&limit=37`)
        expect(answer.status).toBe(200)
        const page = (await answer.json()) as { entries: { entry: { id: string } }[]; next: number; more: boolean }
        seen.push(...page.entries.map(({ entry }) => entry.id))
        after = page.next
        if (last && !page.more) return
        if (isDone && !page.more) last = true
      }
    })()
    const sent = await Promise.all(
      phones.map(async (phone) => {
        const ids: string[] = []
        for (let round = 0; round < 15; round++) {
          const entries = Array.from({ length: 1 + (round % 5) * 3 }, () => phone.entry())
          const { acks, error } = await phone.push(entries)
          expect(error).toBeUndefined()
          ids.push(...acks.map(({ id }) => id))
        }
        return ids
      }),
    )
    isDone = true
    await within(20_000, 'the last pull', pulling)
    const all = sent.flat()
    expect(all).toHaveLength(phones.length * 105)
    expect(new Set(seen)).toEqual(new Set(all))
    expect(seen).toHaveLength(all.length)
    expect((await supervisor.phone.pullAll()).map(({ entry }) => entry.id)).toEqual(seen)
    expect(await two.parts.database.snapshot(verifyRecord)).toMatchObject({ ok: true, entries: all.length })
  })

  it('tell each other’s open boards what came in', async () => {
    const { phone } = await one.first()
    // LISTEN takes effect when its connection is there.
    await within(5_000, 'the listening connection', (async () => {
      while (!(await isServed(two.parts.database.sql))) await new Promise((resolve) => setTimeout(resolve, 20))
    })())
    const events: LiveEvent[] = []
    const heard = new Promise<void>((resolve) => {
      const stop = two.parts.database.listen((event) => {
        events.push(event)
        if (event.event === 'head') resolve(stop())
      })
    })
    const board = await two.ask(await phone.request('GET', '/api/v1/live'))
    expect(board.status).toBe(200)
    const reader = board.body!.pipeThrough(new TextDecoderStream()).getReader()
    expect((await reader.read()).value).toContain('event: head\ndata: {"gseq":0')
    const next = reader.read()
    await phone.push([phone.entry(), phone.entry()])
    await within(5_000, 'the event', heard)
    expect(events.at(-1)).toEqual({ event: 'head', data: { gseq: 2, epoch: phone.epoch } })
    expect((await within(5_000, 'the board', next)).value).toContain('event: head\ndata: {"gseq":2')
    await reader.cancel()
  })

  it('refuse a nonce at the one that was spent at the other, and one’s proof of presence serves at both', async () => {
    const supervisor = await one.first()
    const request = await supervisor.phone.request('GET', '/api/v1/me')
    expect((await one.ask(request.clone())).status).toBe(200)
    expect((await two.ask(request)).status).toBe(401)
    const proof = await one.prove(supervisor)
    const signed = await supervisor.phone.request('GET', '/api/v1/log', undefined, supervisor.phone.presence(proof))
    expect((await two.ask(signed)).status).toBe(200)
  })

  it('are seen by whoever wants to put the database back', async () => {
    const empty = await server!.newDatabase()
    const restoring = postgresDatabase(empty, () => undefined, 'bathkeeper-restore')
    expect(await isServed(restoring.sql)).toBe(false)
    const instance = postgresDatabase(empty, () => undefined)
    await migrate(instance.sql, 'postgres')
    expect(await isServed(restoring.sql)).toBe(true)
    await instance.close()
    await restoring.close()
  })
})
