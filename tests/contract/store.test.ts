import { beforeEach, describe, expect, test } from 'vitest'
import type { Counted, Kept } from '../../src/device/kept.ts'
import type { Store } from '../../src/device/store.ts'
import { deviceId, hash, type EntryId, type Hash } from '../../src/record/ids.ts'
import { webHasher } from '../../src/device/web-seal.ts'
import { appending, enrolled, freshIndexedDb, HandClock, idbStore, saved } from '../device/phone.ts'
import { MemoryStore } from './memory-store.ts'

const implementations: [string, () => Store][] = [
  ['IndexedDB', () => idbStore()],
  ['memory', () => new MemoryStore()],
]

const own = deviceId.parse('00000000000000a1')
const other = deviceId.parse('00000000000000b2')
const sh = (digit: string): Hash => hash.parse(digit.repeat(64))
const ids = (rows: readonly Kept[]): string[] => rows.map(({ entry }) => entry.id)

describe.each(implementations)('the store in %s', (_, create) => {
  let store: Store
  let clock: HandClock
  const write = (text: string): Promise<Counted> => {
    clock.passes(1000)
    return saved(appending(store, { clock }), text)
  }

  beforeEach(async () => {
    freshIndexedDb()
    store = create()
    clock = new HandClock()
    await enrolled(store)
  })

  test('an entry is in the record, in the outbox and at the head, all at once', async () => {
    const first = await write('pump hums')
    expect(await store.byIds([first.entry.id])).toEqual([first])
    expect(await store.waiting()).toEqual({ count: 1, oldest: { seq: 1, id: first.entry.id, savedAt: first.time } })
    expect(await store.head()).toEqual({ dev: own, seq: 1, h: first.h })
  })

  test('an entry made for a head that has moved is not kept', async () => {
    const before = (await store.head())!
    const first = await write('one')
    const late: Counted = { ...first, h: sh('d'), entry: { ...first.entry, id: first.entry.id.replace(/.$/, (c) => (c === '0' ? '1' : '0')) as EntryId } }
    expect(await store.append(late, before, [])).toBe('moved')
    expect(await store.count()).toBe(1)
    expect((await store.waiting()).count).toBe(1)
  })

  test('asking twice to keep the entry that is the head keeps it once and says saved', async () => {
    const before = (await store.head())!
    const first = await write('one')
    expect(await store.append(first, before, [])).toBe('saved')
    expect(await store.count()).toBe(1)
  })

  test('an entry whose answer was lost is not saved a second time when another tab has written behind it meanwhile', async () => {
    const before = (await store.head())!
    const first = await write('one')
    const second = await write('two')
    expect(await store.append(first, before, [])).toBe('saved')
    expect(await store.count()).toBe(2)
    expect(await store.head()).toMatchObject({ seq: 2, h: second.h })
  })

  test('only an acknowledgement that names id and number takes an entry out of the outbox', async () => {
    const [first, second] = [await write('one'), await write('two')]
    expect(await store.acknowledge([{ id: second.entry.id, seq: 1 }])).toEqual([])
    expect((await store.waiting()).count).toBe(2)
    const gone = await store.acknowledge([{ id: first.entry.id, seq: 1 }])
    expect(gone).toEqual([first.entry.id])
    expect((await store.waiting()).oldest?.id).toBe(second.entry.id)
    expect(await store.acknowledge([{ id: first.entry.id, seq: 1 }])).toEqual([])
    expect(await store.count()).toBe(2)
  })

  test('an entry of a second history is marked, unless the server has counted it after all', async () => {
    const [first, second] = [await write('one'), await write('two')]
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await store.startCursor(start)
    await store.apply({ from: start, entries: [{ ...second, epoch: 'e1', gseq: 1, recvAt: 99 }], devices: [], next: { ...start, after: 1 } })
    expect(ids(await store.setApart([first.entry.id, second.entry.id], 'e1'))).toEqual([first.entry.id])
    expect(await store.byIds([first.entry.id])).toMatchObject([{ status: 'quarantined', why: 'fork', entry: first.entry }])
    expect(await store.setApart([first.entry.id], 'e1')).toEqual([])
  })

  test('an entry of another phone gives way to the one that the server, put back, has taken under its number', async () => {
    const [one, two] = [await pulledFrom(other, 'one history'), await pulledFrom(other, 'another history')]
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await store.startCursor(start)
    await store.apply({ from: start, entries: [one], devices: [], next: { ...start, after: 7 } })
    const anew = { epoch: 'e2', after: 0, sh: sh('0') }
    await store.startCursor(anew)
    const { changed } = await store.apply({ from: anew, entries: [{ ...two, epoch: 'e2' }], devices: [], next: { ...anew, after: 7 } })
    expect(changed.map(({ entry, status }) => [entry.id, status])).toEqual([[one.entry.id, 'quarantined'], [two.entry.id, 'valid']])
    const third = { epoch: 'e3', after: 0, sh: sh('0') }
    await store.startCursor(third)
    await store.apply({ from: third, entries: [{ ...one, epoch: 'e3' }], devices: [], next: { ...third, after: 7 } })
    expect((await store.byIds([one.entry.id, two.entry.id])).map(({ status, why }) => [status, why])).toEqual([['valid', undefined], ['quarantined', 'fork']])
  })

  test('own entries go back into the outbox, without those that are there still', async () => {
    const [first, second, third] = [await write('one'), await write('two'), await write('three')]
    await store.acknowledge([first, second].map(({ entry }) => ({ id: entry.id, seq: entry.seq })))
    expect(await store.requeue(2)).toBe(1)
    expect(await store.waiting()).toEqual({ count: 2, oldest: { seq: 2, id: second.entry.id, savedAt: second.time } })
    expect(ids(await store.chain(own, 2, 10))).toEqual([second.entry.id, third.entry.id])
  })

  const pulledFrom = async (dev: string, text: string): Promise<Counted> => {
    const there = new MemoryStore()
    await enrolled(there, dev)
    clock.passes(1000)
    const written = await saved(appending(there, { clock }), text)
    return { ...written, epoch: 'e1', gseq: 7, recvAt: clock.now }
  }

  test('a page and the cursor are taken in together, and only at the cursor from which it was asked', async () => {
    const theirs = await pulledFrom(other, 'from the other phone')
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    const next = { epoch: 'e1', after: 7, sh: sh('a') }
    await store.startCursor(start)
    const page = { from: start, entries: [theirs], devices: [{ dev: other }], next }
    expect(await store.apply(page)).toEqual({ applied: true, changed: [theirs], regained: 0 })
    expect(await store.cursor()).toEqual(next)
    expect(await store.count()).toBe(1)
    expect(await store.keys('devices')).toEqual([other])
    const later = { epoch: 'e1', after: 9, sh: sh('b') }
    expect(await store.apply({ ...page, from: next, next: later, entries: [] })).toMatchObject({ applied: true })
    expect(await store.apply(page)).toEqual({ applied: false, changed: [], regained: 0 })
    expect(await store.apply({ ...page, from: { ...later, sh: sh('c') } })).toEqual({ applied: false, changed: [], regained: 0 })
    expect(await store.cursor()).toEqual(later)
  })

  test('a page whose answer was lost with the connection is taken in once, and what it changed is told all the same', async () => {
    const theirs = await pulledFrom(other, 'from the other phone')
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    const page = { from: start, entries: [theirs], devices: [], next: { epoch: 'e1', after: 7, sh: sh('a') } }
    await store.startCursor(start)
    await store.apply(page)
    expect(await store.apply(page)).toEqual({ applied: true, changed: [theirs], regained: 0 })
    expect(await store.count()).toBe(1)
  })

  test('an own entry that comes back gets the number and time of the server and keeps its content', async () => {
    const first = await write('one')
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await store.startCursor(start)
    const back = { ...first, epoch: 'e1', gseq: 3, recvAt: 99 }
    const { changed } = await store.apply({ from: start, entries: [back], devices: [], next: { ...start, after: 3 } })
    expect(changed).toEqual([back])
    expect(await store.byIds([first.entry.id])).toEqual([back])
    expect((await store.head())!.seq).toBe(1)
    const again = await store.apply({ from: { ...start, after: 3 }, entries: [back], devices: [], next: { ...start, after: 4 } })
    expect(again.changed).toEqual([])
  })

  test('an entry with a known id and another content does not replace what was kept first', async () => {
    const first = await write('one')
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await store.startCursor(start)
    const forged: Counted = { ...first, h: sh('f'), entry: { ...first.entry, data: { text: 'another', about: 'general' } }, gseq: 3, recvAt: 99 }
    const { applied, changed } = await store.apply({ from: start, entries: [forged], devices: [], next: { ...start, after: 3 } })
    expect([applied, changed]).toEqual([true, []])
    expect(await store.byIds([first.entry.id])).toEqual([first])
  })

  test('of two entries with one id the first stays, in one page or among a thousand of the same time', async () => {
    const theirs = await pulledFrom(other, 'the first')
    const twin: Counted = { ...theirs, h: sh('f'), gseq: 8, entry: { ...theirs.entry, seq: 2, data: { text: 'another', about: 'general' } } }
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await store.startCursor(start)
    await store.apply({ from: start, entries: [theirs, twin], devices: [], next: { ...start, after: 8 } })
    expect(await store.byIds([theirs.entry.id])).toEqual([theirs])
    const around = Array.from({ length: 1200 }, (_, index): Counted => ({ ...theirs, gseq: 9 + index, entry: { ...theirs.entry, seq: 3 + index, id: `${theirs.entry.id.slice(0, 24)}${index.toString(16).padStart(12, '0')}` as EntryId } }))
    await store.apply({ from: { ...start, after: 8 }, entries: around, devices: [], next: { ...start, after: 2000 } })
    const wide = [around[0]!, { ...twin, gseq: 2001 }, around.at(-1)!]
    expect((await store.apply({ from: { ...start, after: 2000 }, entries: wide, devices: [], next: { ...start, after: 2001 } })).changed).toEqual([])
    expect(await store.byIds([theirs.entry.id])).toEqual([theirs])
    expect(await store.count()).toBe(1201)
  })

  test('own entries that this phone has lost are taken up into its chain again', async () => {
    const [first, second] = [await write('one'), await write('two')]
    const back = create === implementations[0]![1] ? idbStore('went-back') : new MemoryStore()
    const { receipt, keys } = { receipt: await store.take('singles', 'receipt'), keys: await store.take('singles', 'keys') }
    await back.begin({ head: { dev: own, seq: 0, h: first.entry.prev }, expected: undefined, receipt, keys })
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await back.startCursor(start)
    const entries = [first, second].map((row, index) => ({ ...row, epoch: 'e1', gseq: index + 1, recvAt: 99 }))
    const { regained } = await back.apply({ from: start, entries, devices: [], next: { ...start, after: 2 } })
    expect(regained).toBe(2)
    expect(await back.head()).toEqual({ dev: own, seq: 2, h: second.h })
    await back.close()
  })

  test('so is one that the server does not count, but not one that this phone never signed', async () => {
    const first = await write('one')
    const back = create === implementations[0]![1] ? idbStore('went-back-too') : new MemoryStore()
    await back.begin({ head: { dev: own, seq: 0, h: first.entry.prev }, expected: undefined, receipt: 'r', keys: 'k' })
    const start = { epoch: 'e1', after: 0, sh: sh('0') }
    await back.startCursor(start)
    const said = { ...first, epoch: 'e1', gseq: 1, recvAt: 99 }
    const forged: Kept = { ...said, status: 'quarantined', why: 'signature' }
    expect((await back.apply({ from: start, entries: [forged], devices: [], next: { ...start, after: 1 } })).regained).toBe(0)
    await back.begin({ head: { dev: own, seq: 0, h: first.entry.prev }, expected: await back.head(), receipt: 'r', keys: 'k', forget: true })
    await back.startCursor(start)
    const uncounted: Kept = { ...said, status: 'invalid', why: 'role' }
    expect((await back.apply({ from: start, entries: [uncounted], devices: [], next: { ...start, after: 1 } })).regained).toBe(1)
    expect(await back.head()).toEqual({ dev: own, seq: 1, h: first.h })
    await back.close()
  })

  test('entries are read by time, oldest or newest first, and by kind', async () => {
    const written = [await write('one'), await write('two'), await write('three')]
    expect(ids(await store.inTime({}))).toEqual(ids(written))
    expect(ids(await store.inTime({ newestFirst: true, limit: 2 }))).toEqual(ids([written[2]!, written[1]!]))
    expect(ids(await store.inTime({ from: written[1]!.time, to: written[1]!.time }))).toEqual([written[1]!.entry.id])
    expect(ids(await store.ofKind('note', { newestFirst: true, limit: 1 }))).toEqual([written[2]!.entry.id])
    expect(await store.ofKind('reading', {})).toEqual([])
  })

  test('photos wait until they are sent, and only sent ones are dropped', async () => {
    const [waiting, done] = [sh('1'), sh('2')]
    const first = await write('one')
    for (const sha256 of [waiting, done]) await store.keepBlob({ sha256, bytes: new ArrayBuffer(3), of: first.entry.id, sent: 0 })
    await store.blobSent(done)
    expect(await store.unsentBlobs()).toEqual([waiting])
    expect(await store.offerBlobsAgain()).toBe(1)
    expect([...(await store.unsentBlobs())].sort()).toEqual([waiting, done])
    await store.blobSent(done)
    expect(await store.dropSentBlobs()).toBe(1)
    expect(await store.blob(done)).toBeUndefined()
    expect((await store.blob(waiting))?.bytes.byteLength).toBe(3)
  })

  test('a small thing is revised in one step', async () => {
    const count = (value: unknown): number => (typeof value === 'number' ? value : 0) + 1
    await Promise.all(Array.from({ length: 10 }, () => store.revise('settings', 'opened', count)))
    expect(await store.take('settings', 'opened')).toBe(10)
    await store.keep('drafts', 'reading', { keyed: '4.9' })
    expect(await store.keys('drafts')).toEqual(['reading'])
    await store.remove('drafts', 'reading')
    expect(await store.take('drafts', 'reading')).toBeUndefined()
  })

  test('a phone that becomes another device empties its outbox only with what it was before put by, to be handed in', async () => {
    const first = await write('one')
    const seed = await webHasher.sha256('another beginning')
    const head = { dev: other, seq: 0, h: seed }
    const old = await store.head()
    expect(await store.begin({ head, expected: { ...old!, seq: 0 }, receipt: 'r', keys: 'k' })).toBe('moved')
    expect((await store.waiting()).count).toBe(1)
    expect(await store.begin({ head, expected: old, receipt: 'r', keys: 'k', former: { dev: own, row: { unsent: 1 } } })).toBe('begun')
    expect(await store.waiting()).toEqual({ count: 0 })
    expect(await store.take('exports', own)).toEqual({ unsent: 1 })
    expect(await store.byIds([first.entry.id])).toHaveLength(1)
    await store.begin({ head, expected: head, receipt: 'r', keys: 'k', forget: true })
    expect(await store.count()).toBe(0)
    expect(await store.keys('exports')).toEqual([])
    expect(await store.take('singles', 'receipt')).toBe('r')
  })
})
