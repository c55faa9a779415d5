import { beforeEach, describe, expect, test } from 'vitest'
import { instantWithOffset } from '../../src/device/clock.ts'
import { createWebVerifier, publicHalf } from '../../src/device/web-seal.ts'
import { StoreFault } from '../../src/device/faults.ts'
import type { Locks } from '../../src/device/locks.ts'
import type { Store } from '../../src/device/store.ts'
import { entryId } from '../../src/record/ids.ts'
import { sealProblem } from '../../src/record/seal.ts'
import { appending, enrolled, freshIndexedDb, HandClock, idbStore, note, operator, saved } from './phone.ts'

let store: Store
beforeEach(() => {
  freshIndexedDb()
  store = idbStore()
})

const sealedOf = ({ entry, h, sig }: Awaited<ReturnType<typeof saved>>) => ({ entry, h, sig })

describe('appending', () => {
  test('every entry carries the hash of the one before and a signature that holds', async () => {
    const { receipt, keys } = await enrolled(store)
    const append = appending(store)
    const written = [await saved(append, 'one'), await saved(append, 'two'), await saved(append, 'three')]
    expect(written.map(({ entry }) => entry.prev)).toEqual([receipt.seed, written[0]!.h, written[1]!.h])
    expect(written.map(({ entry }) => entry.seq)).toEqual([1, 2, 3])
    const verifier = createWebVerifier()
    for (const one of written) expect(await sealProblem(sealedOf(one), await publicHalf(keys), verifier)).toBeUndefined()
    const bent = { ...written[0]!, entry: { ...written[0]!.entry, data: note('ONE') } }
    expect(await sealProblem(sealedOf(bent), await publicHalf(keys), verifier)).toBe('hash')
  })

  test('wall clock with offset, zone, page life, running time and clock error are written as they were', async () => {
    await enrolled(store)
    const clock = new HandClock()
    await store.keep('singles', 'skew', { ms: -1500, within: 40, at: clock.now })
    clock.passes(2500)
    const { entry, time } = await saved(appending(store, { clock }), 'one')
    expect(entry).toMatchObject({ at: '2026-01-12T06:40:02.500+01:00', tz: 'Europe/Paris', sess: '00c0ffee', mono: 2500, skew: { ms: -1500, within: 40 } })
    expect(time).toBe(clock.now - 1500)
    expect(entryId.safeParse(entry.id).success).toBe(true)
    expect(Number.parseInt(entry.id.replaceAll('-', '').slice(0, 12), 16)).toBe(clock.now)
  })

  test('after the wall clock was set back the clock error is no longer claimed', async () => {
    await enrolled(store)
    const clock = new HandClock()
    await store.keep('singles', 'skew', { ms: 100, within: 5, at: clock.now })
    clock.now -= 3_600_000
    const { entry } = await saved(appending(store, { clock }), 'one')
    expect(entry.skew).toBeNull()
  })

  test('offsets west of Greenwich and of half an hour are written as ISO 8601 has them', () => {
    expect(instantWithOffset(Date.UTC(2026, 6, 1, 0, 30), -210)).toBe('2026-06-30T21:00:00.000-03:30')
    expect(instantWithOffset(Date.UTC(2026, 6, 1, 0, 30), 0)).toBe('2026-07-01T00:30:00.000+00:00')
  })

  test('before enrolment nothing is taken, and it is said', async () => {
    expect(await appending(store)('note', note('one'), { person: operator })).toEqual({ ok: false, refusal: { code: 'notEnrolled' } })
  })

  test('data that does not fit its kind is refused with the place, and nothing is saved', async () => {
    await enrolled(store)
    const outcome = await appending(store)('note', { text: '', about: 'general' }, { person: operator })
    expect(outcome).toMatchObject({ ok: false, refusal: { code: 'unfit', path: 'text' } })
    const surrogate = await appending(store)('note', note('\ud800'), { person: operator })
    expect(surrogate).toMatchObject({ ok: false, refusal: { code: 'unfit', detail: 'loneSurrogate' } })
    // What the server could not read would block everything behind it.
    const nested = (levels: number): unknown => (levels ? { deeper: nested(levels - 1) } : 1)
    const amend = (data: unknown) => appending(store)('amend', { ref: '019bb0e0-0000-7000-8000-000000000000', data, why: 'test' } as never, { person: operator })
    expect(await amend({ deeper: nested(30) })).toMatchObject({ ok: false, refusal: { code: 'unfit', detail: 'tooDeep' } })
    expect(await amend(JSON.parse('{"text":{"__proto__":1}}'))).toMatchObject({ ok: false, refusal: { code: 'unfit', detail: 'forbiddenName' } })
    expect(await store.count()).toBe(0)
  })

  test('an entry larger than the server takes is refused before it is kept', async () => {
    await enrolled(store)
    const data = { shift: 'night', date: '2026-01-12', notes: '', open: Array.from({ length: 2000 }, () => '019bb0e0-0000-7000-8000-000000000000'), side: 'given' } as never
    expect(await appending(store)('handover', data, { person: operator })).toMatchObject({ ok: false, refusal: { code: 'tooLarge' } })
    expect(await store.count()).toBe(0)
  })

  test('two tabs that append at once never fork the chain, with no lock to help them', async () => {
    await enrolled(store)
    const tabs = [store, idbStore()].map((tab, index) => appending(tab, { clock: new HandClock(undefined, 0, `0000000${index}`) }))
    await Promise.all(Array.from({ length: 30 }, (_, index) => saved(tabs[index % 2]!, `note ${index}`)))
    const chain = await store.chain((await store.head())!.dev, 1, 100)
    expect(chain.map(({ entry }) => entry.seq)).toEqual(Array.from({ length: 30 }, (_, index) => index + 1))
    chain.slice(1).forEach(({ entry }, index) => expect(entry.prev).toBe(chain[index]!.h))
    expect(new Set(chain.map(({ entry }) => entry['data']!).map((data) => (data as { text: string }).text)).size).toBe(30)
    expect(new Set(chain.map(({ entry }) => entry['sess'])).size).toBe(2)
  })

  test('with a lock the entries come one after the other', async () => {
    await enrolled(store)
    let last: Promise<unknown> = Promise.resolve()
    let inside = 0
    const locks: Locks = {
      inTurn: (_, work) => {
        const turn = last.then(async () => {
          expect(++inside).toBe(1)
          const result = await work()
          inside--
          return result
        })
        last = turn
        return turn
      },
      ifFree: (_, work) => work(),
    }
    const append = appending(store, { locks })
    await Promise.all([saved(append, 'one'), saved(append, 'two')])
    expect((await store.head())?.seq).toBe(2)
  })

  test('a head that moves under every attempt is a fault, not an endless loop', async () => {
    await enrolled(store)
    const moving: Store = { ...store, append: () => Promise.resolve('moved') }
    await expect(saved(appending(moving), 'one')).rejects.toEqual(expect.objectContaining({ code: 'contended' }))
  })

  test('a phone killed between any two steps has either all of an entry or nothing of it', async () => {
    await enrolled(store)
    await saved(appending(store), 'before')
    // The transaction is cut off when the first request of it has been answered, as a kill does.
    const original = IDBObjectStore.prototype.put
    for (const fails of ['entries', 'outbox', 'singles']) {
      const method = fails === 'singles' ? 'put' : 'add'
      const real = IDBObjectStore.prototype[method]
      IDBObjectStore.prototype[method] = function (this: IDBObjectStore, ...given: Parameters<typeof original>) {
        const request = real.apply(this, given)
        if (this.name === fails) this.transaction.abort()
        return request
      }
      await expect(saved(appending(store), 'cut off')).rejects.toBeInstanceOf(StoreFault)
      IDBObjectStore.prototype[method] = real
    }
    expect(await store.count()).toBe(1)
    expect((await store.waiting()).count).toBe(1)
    expect((await store.head())?.seq).toBe(1)
    const after = await saved(appending(store), 'after')
    expect(after.entry.seq).toBe(2)
  })
})
