import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import type { Kept } from '../../src/device/kept.ts'
import type { Phone } from '../../src/device/open-phone.ts'
import type { SendProblem } from '../../src/device/problems.ts'
import { sha256OfBytes } from '../../src/device/web-seal.ts'
import { readEpoch } from '../../src/server/database/facts.ts'
import { setDeviceState } from '../../src/server/database/devices.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { Laboratory, testPhone } from './laboratory.ts'
import { HandClock, note, operator, saved } from './phone.ts'

let lab: Laboratory
let clock: HandClock
beforeEach(async () => {
  clock = new HandClock()
  lab = await Laboratory.open(clock)
})
afterEach(() => lab.close())

type Fetch = Laboratory['fetch']
const phoneWith = async (fetch: Fetch = lab.fetch, store = new MemoryStore()): Promise<Phone & { memory: MemoryStore }> => {
  const phone = testPhone({ store, fetch, clock })
  await lab.letIn(phone)
  return { ...phone, memory: store }
}
const write = (phone: Phone, text: string): ReturnType<typeof saved> => {
  clock.passes(1000)
  return saved(phone.append, text)
}
const send = async (phone: Phone): Promise<SendProblem | undefined> => (await phone.sender.sendNow()).problem
const texts = async (phone: Phone): Promise<string[]> => (await phone.book.since(0)).map(({ entry }) => (entry.data as { text: string }).text)
const handedInto = async (phone: Phone): Promise<unknown[]> => (await Promise.all((await phone.store.keys('exports')).map((dev) => phone.store.take('exports', dev)))).map((row) => (row as { handedInto?: string }).handedInto)
const epochNow = async (): Promise<string> => readEpoch(lab.database.sql)
const onServer = async (): Promise<string[]> => (await lab.entries()).map(({ body }) => (JSON.parse(body) as { data: { text: string } }).data.text)

describe('an exchange with the real server', () => {
  test('what waits goes up once, in order, and another phone sees it', async () => {
    const [one, other] = [await phoneWith(), await phoneWith()]
    await write(one, 'a')
    await write(one, 'b')
    await write(other, 'c')
    expect(await send(one)).toBeUndefined()
    expect(await send(other)).toBeUndefined()
    expect(await send(one)).toBeUndefined()
    expect(await onServer()).toEqual(['a', 'b', 'c'])
    expect(await texts(one)).toEqual(['a', 'b', 'c'])
    expect(await texts(other)).toEqual(['a', 'b', 'c'])
    expect(one.sender.state).toMatchObject({ waiting: 0, isRunning: false, concern: 'none', lastExchangeAt: clock.now })
    expect((await one.book.since(0)).every(({ gseq, recvAt, epoch }) => gseq && recvAt && epoch)).toBe(true)
    expect((await lab.entries()).every(({ status }) => status === 'valid')).toBe(true)
  })

  test('the books are told of what is new, and again when it has come back from the server', async () => {
    const phone = await phoneWith()
    const told: Kept[][] = []
    phone.book.onEntries((news) => told.push(news))
    const { entry } = await write(phone, 'a')
    await send(phone)
    expect(told.map((rows) => rows.map((row) => [row.entry.id, row.gseq, row.recvAt]))).toEqual([
      [[entry.id, undefined, undefined]],
      [[entry.id, 1, clock.now]],
    ])
  })

  test('an answer that got lost costs nothing: sent again, stored once', async () => {
    let lost = 0
    const phone = await phoneWith(async (path, init) => {
      const response = await lab.fetch(path, init)
      if (path.endsWith('/push') && lost++ < 2) throw new TypeError('connection reset')
      return response
    })
    await write(phone, 'a')
    expect(await send(phone)).toEqual({ code: 'unreachable' })
    expect((await phone.store.waiting()).count).toBe(1)
    expect(await send(phone)).toEqual({ code: 'unreachable' })
    expect(await send(phone)).toBeUndefined()
    expect((await phone.store.waiting()).count).toBe(0)
    expect(await onServer()).toEqual(['a'])
  })

  test('an answer cut off half-way leaves everything as it was', async () => {
    let isCut = true
    const phone = await phoneWith(async (path, init) => {
      const response = await lab.fetch(path, init)
      if (!isCut || !/\/(push|pull)/.test(path)) return response
      const text = await response.text()
      return new Response(text.slice(0, text.length / 2), response)
    })
    await write(phone, 'a')
    expect(await send(phone)).toEqual({ code: 'unreachable' })
    expect((await phone.store.waiting()).count).toBe(1)
    isCut = false
    expect(await send(phone)).toBeUndefined()
    expect(await texts(phone)).toEqual(['a'])
  })

  test('a log-in page of some network is not taken for the server', async () => {
    let isCaptive = false
    const phone = await phoneWith(async (path, init) =>
      isCaptive ? new Response('<html>Welcome</html>', { headers: { 'Content-Type': 'text/html' } }) : lab.fetch(path, init),
    )
    await write(phone, 'a')
    isCaptive = true
    expect(await send(phone)).toMatchObject({ code: 'strange' })
    expect((await phone.store.waiting()).count).toBe(1)
  })

  test('acknowledgements that name other ids empty nothing', async () => {
    const phone = await phoneWith(async (path, init) => {
      const response = await lab.fetch(path, init)
      if (!path.endsWith('/push')) return response
      const answer = (await response.json()) as { acks: { id: string }[] }
      for (const ack of answer.acks) ack.id = ack.id.replace(/^......../, 'ffffffff')
      return new Response(JSON.stringify(answer), response)
    })
    await write(phone, 'a')
    expect(await send(phone)).toMatchObject({ code: 'strange', detail: 'no acks' })
    expect((await phone.store.waiting()).count).toBe(1)
  })

  test('a thousand entries go in several pushes and come in several pages', async () => {
    const [one, other] = [await phoneWith(), await phoneWith()]
    for (let count = 0; count < 1000; count++) await write(one, `n${count}`)
    expect(await send(one)).toBeUndefined()
    expect(await send(other)).toBeUndefined()
    expect(await texts(other)).toEqual(Array.from({ length: 1000 }, (_, count) => `n${count}`))
  }, 30_000)

  test('nonces that a restarted server no longer knows are replaced without a word', async () => {
    const phone = await phoneWith()
    await send(phone)
    await lab.restart()
    clock.passes(3_600_000)
    await write(phone, 'a')
    expect(await send(phone)).toBeUndefined()
    expect(await onServer()).toEqual(['a'])
  })

  test('the clock error is measured and written on the next entry', async () => {
    const phoneClock = new HandClock(clock.now - 90_000)
    const phone = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock: phoneClock })
    await lab.letIn(phone)
    expect((await saved(phone.append, 'a')).entry.skew).toEqual({ ms: 90_000, within: 0 })
    expect(await send(phone)).toBeUndefined()
    phoneClock.now += 60_000
    phoneClock.running += 10
    await send(phone)
    expect((await saved(phone.append, 'b')).entry.skew).toEqual({ ms: 30_000, within: 0 })
  })

  test('a photo goes up after its entry, and is not sent twice', async () => {
    const paths: string[] = []
    const phone = await phoneWith(async (path, init) => {
      paths.push(`${init.method} ${path.replace(/[0-9a-f]{64}/, '…')}`)
      return lab.fetch(path, init)
    })
    const bytes = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]).buffer
    const photo = { sha256: await sha256OfBytes(bytes), bytes, widthPixels: 4, heightPixels: 3 }
    const appended = await phone.append('note', note('look'), { person: operator, photos: [photo] })
    expect(appended.ok).toBe(true)
    await phone.sender.refresh()
    expect(phone.sender.state.waitingPhotos).toBe(1)
    expect(await send(phone)).toBeUndefined()
    expect(await phone.store.unsentBlobs()).toEqual([])
    const order = paths.filter((path) => /push|blob/.test(path))
    expect(order).toEqual(['POST /api/v1/push', 'HEAD /api/v1/blob/…', 'PUT /api/v1/blob/…'])
    await phone.store.offerBlobsAgain()
    expect(await send(phone)).toBeUndefined()
    expect(paths.filter((path) => path.startsWith('PUT'))).toHaveLength(1)
  })

  test('a phone that no supervisor has confirmed keeps what it has and says why', async () => {
    const phone = testPhone({ store: new MemoryStore(), fetch: lab.fetch, clock })
    const enrolled = await phone.enrolment.enrol({ code: await lab.code(), name: 'New' })
    expect(enrolled).toMatchObject({ ok: true, receipt: { state: 'waiting' } })
    await write(phone, 'a')
    expect(await send(phone)).toEqual({ code: 'notConfirmed' })
    expect((await phone.store.waiting()).count).toBe(1)
    await lab.confirm((await phone.store.head())!.dev)
    expect(await send(phone)).toBeUndefined()
    expect(await onServer()).toEqual(['a'])
  })

  test('a phone that was written off still hands in what it holds, and is told that it does not count', async () => {
    const phone = await phoneWith()
    await write(phone, 'a')
    await setDeviceState(lab.database.sql, (await phone.store.head())!.dev, 'revoked')
    expect(await send(phone)).toEqual({ code: 'revoked' })
    expect((await phone.store.waiting()).count).toBe(0)
    expect((await lab.entries()).map(({ status }) => status)).toEqual(['quarantined'])
  })

  test('two phones with one profile: the second history is a fork, kept aside, and the phone goes on as another device', async () => {
    const phone = await phoneWith()
    await write(phone, 'a')
    await send(phone)
    const clone = testPhone({ store: phone.memory.copy(), fetch: lab.fetch, clock })
    await write(phone, 'b of the phone')
    expect(await send(phone)).toBeUndefined()
    await write(clone, 'b of the clone')
    expect(await send(clone)).toMatchObject({ code: 'fork', seq: 2 })
    expect((await clone.store.waiting()).count).toBe(1)
    await lab.letIn(clone, 'Anew')
    expect(await handedInto(clone)).toEqual([undefined])
    await clone.sender.refresh()
    expect(clone.sender.state.waiting).toBe(1)
    await write(clone, 'c')
    expect(await send(clone)).toBeUndefined()
    expect(await handedInto(clone)).toEqual([await epochNow()])
    expect(clone.sender.state.waiting).toBe(0)
    expect(await onServer()).toEqual(['a', 'b of the phone', 'c'])
    const aside = await lab.database.sql.selectFrom('asides').selectAll().execute()
    expect(aside.map(({ body }) => (JSON.parse(body) as { data: { text: string } }).data.text)).toEqual(['b of the clone'])
  })

  test('a phone whose database went back gets its own entries from the server and goes on where it was', async () => {
    const phone = await phoneWith()
    const before = phone.memory.copy()
    await write(phone, 'a')
    await write(phone, 'b')
    await send(phone)
    const again = testPhone({ store: before, fetch: lab.fetch, clock })
    expect(await send(again)).toBeUndefined()
    await write(again, 'c')
    expect(await send(again)).toBeUndefined()
    expect(await onServer()).toEqual(['a', 'b', 'c'])
  })

  for (const announced of [true, false])
    test(`a server put back from a backup${announced ? '' : ' by copying a file'} gets again what it lost, once, and every phone agrees`, async () => {
      const [one, other] = [await phoneWith(), await phoneWith()]
      await write(one, 'a')
      await send(one)
      const copy = await lab.backUp()
      await write(one, 'b')
      await write(other, 'c')
      for (const phone of [one, other, one]) expect(await send(phone)).toBeUndefined()
      await lab.restore(copy, announced)
      expect(await onServer()).toEqual(['a'])
      await write(other, 'd')
      for (const phone of [other, one, other]) expect(await send(phone)).toBeUndefined()
      expect((await onServer()).sort()).toEqual(['a', 'b', 'c', 'd'])
      for (const phone of [one, other]) expect(await texts(phone)).toEqual(['a', 'b', 'c', 'd'])
      const log = await lab.database.sql.selectFrom('log').select('what').execute()
      if (!announced) expect(log.map(({ what }) => what).filter((what) => what.startsWith('head'))).toEqual(['headOther'])
    })

  test('an entry that was acknowledged, lost with a server put back unannounced, and seen by nobody else, is sent again', async () => {
    let isCut = false
    const phone = await phoneWith(async (path, init) => {
      if (isCut && path.includes('/pull')) throw new TypeError('connection reset')
      return lab.fetch(path, init)
    })
    await write(phone, 'a')
    await send(phone)
    const copy = await lab.backUp()
    isCut = true
    await write(phone, 'b')
    await write(phone, 'c')
    expect(await send(phone)).toEqual({ code: 'unreachable' })
    expect((await phone.store.waiting()).count).toBe(0)
    await lab.restore(copy, false)
    expect(await onServer()).toEqual(['a'])
    isCut = false
    expect(await send(phone)).toBeUndefined()
    expect(await onServer()).toEqual(['a', 'b', 'c'])
    expect((await phone.store.waiting()).count).toBe(0)
  })

  test('a second history longer than one push is kept aside to its end before the phone lets go of it', async () => {
    const phone = await phoneWith()
    await write(phone, 'a')
    await send(phone)
    const twin = testPhone({ store: phone.memory.copy(), fetch: lab.fetch, clock })
    await write(phone, 'of the phone')
    await send(phone)
    for (let count = 0; count < 450; count++) await write(twin, `of the twin ${count}`)
    expect(await send(twin)).toMatchObject({ code: 'fork' })
    await lab.letIn(twin, 'Twin')
    expect(await send(twin)).toBeUndefined()
    expect(await handedInto(twin)).toEqual([await epochNow()])
    const asides = await lab.database.sql.selectFrom('asides').select(['seq', 'why']).orderBy('seq').execute()
    expect(asides.map(({ seq }) => seq)).toEqual(Array.from({ length: 450 }, (_, index) => index + 2))
    expect(new Set(asides.map(({ why }) => why))).toEqual(new Set(['fork']))
  }, 30_000)

  test('what a phone handed in for the device it was before is handed in again to a server put back to before that, even to before it knew that device', async () => {
    const empty = await lab.backUp()
    const phone = await phoneWith()
    await write(phone, 'sent as the first')
    await send(phone)
    const before = await lab.backUp()
    await write(phone, 'unsent as the first')
    const first = (await phone.store.head())!.dev
    await lab.letIn(phone, 'Second')
    await write(phone, 'as the second')
    expect(await send(phone)).toBeUndefined()
    const all = ['sent as the first', 'unsent as the first', 'as the second']
    expect((await onServer()).sort()).toEqual([...all].sort())
    for (const copy of [before, empty]) {
      await lab.restore(copy, true)
      expect(await send(phone)).toEqual({ code: 'notConfirmed' })
      await lab.confirm((await phone.store.head())!.dev)
      if (copy === empty) {
        expect(await send(phone)).toEqual({ code: 'notConfirmed' })
        await lab.confirm(first)
      }
      expect(await send(phone)).toBeUndefined()
      expect((await onServer()).sort()).toEqual([...all].sort())
      expect((await lab.entries()).every(({ status }) => status === 'valid')).toBe(true)
    }
  })

  test('a phone whose push the server does not read still sees what the others wrote', async () => {
    const other = await phoneWith()
    await write(other, 'a')
    await send(other)
    const phone = await phoneWith((path, init) =>
      path.endsWith('/push') ? Promise.resolve(new Response(JSON.stringify({ error: 'badRequest' }), { status: 400 })) : lab.fetch(path, init))
    await write(phone, 'b')
    expect(await send(phone)).toMatchObject({ code: 'refused', error: 'badRequest' })
    expect(await texts(phone)).toEqual(['a', 'b'])
  })

  test('a server older than the enrolment of a phone knows it again by its receipt, after a supervisor', async () => {
    const copy = await lab.backUp()
    const phone = await phoneWith()
    await write(phone, 'a')
    await send(phone)
    await write(phone, 'b')
    await lab.restore(copy, true)
    expect(await send(phone)).toEqual({ code: 'notConfirmed' })
    expect(await send(phone)).toEqual({ code: 'notConfirmed' })
    expect((await phone.store.waiting()).count).toBe(2)
    await lab.confirm((await phone.store.head())!.dev)
    expect(await send(phone)).toBeUndefined()
    expect(await onServer()).toEqual(['a', 'b'])
  })

  const tampered = (change: (page: { entries: Record<string, unknown>[]; head: { gseq: number; sh: string } }) => void): Fetch => async (path, init) => {
    const response = await lab.fetch(path, init)
    if (!path.includes('/pull')) return response
    const page = (await response.json()) as Parameters<typeof change>[0]
    change(page)
    return new Response(JSON.stringify(page), response)
  }

  test('an entry changed on the server is kept, marked, and counts nowhere; the others count', async () => {
    const one = await phoneWith()
    await write(one, 'a')
    await write(one, 'b')
    await send(one)
    const other = await phoneWith(tampered(({ entries }) => {
      const entry = entries[0]?.['entry'] as { data: { text: string } } | undefined
      if (entry) entry.data.text = 'A'
    }))
    expect(await send(other)).toBeUndefined()
    expect(await texts(other)).toEqual(['b'])
    expect(await other.book.uncounted()).toMatchObject([{ status: 'quarantined', why: 'hash' }])
  })

  test('a record with an entry taken out of it, or with a head it did not sign, is refused', async () => {
    const one = await phoneWith()
    for (const text of ['a', 'b', 'c']) await write(one, text)
    await send(one)
    const cut = await phoneWith(tampered(({ entries }) => void entries.splice(1, 1)))
    expect(await send(cut)).toEqual({ code: 'recordBroken', gseq: 3, why: 'link' })
    const forged = await phoneWith(tampered(({ head }) => void (head.gseq = 2)))
    expect(await send(forged)).toMatchObject({ code: 'recordBroken', why: 'headSignature' })
    expect(await texts(forged)).toEqual([])
  })

  test('an entry of a later version does not keep out what comes after it', async () => {
    const one = await phoneWith()
    for (const text of ['a', 'b']) await write(one, text)
    await send(one)
    const older = await phoneWith(tampered(({ entries }) => {
      if (entries[0]) entries[0]['status'] = 'weighed'
    }))
    expect(await send(older)).toBeUndefined()
    expect(await texts(older)).toEqual(['b'])
    expect(await older.book.uncounted()).toMatchObject([{ status: 'opaque' }])
  })

  test('the server is told what waits, how the clock stands and which head was seen', async () => {
    const phone = await phoneWith()
    await write(phone, 'a')
    await send(phone)
    const row = await lab.database.sql.selectFrom('devices').select('report').executeTakeFirst()
    expect(JSON.parse(row!.report!)).toMatchObject({ waiting: 0, waitingBlobs: 0, persisted: true, witness: { gseq: 1 } })
  })
})
