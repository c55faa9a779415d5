import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { nextBatch } from '../../src/device/outbox.ts'
import type { Store } from '../../src/device/store.ts'
import { databaseVersion } from '../../src/device/idb/tables.ts'
import { hash } from '../../src/record/ids.ts'
import { appending, enrolled, freshIndexedDb, idbStore, saved, type QuietEvents } from './phone.ts'

let store: Store
let seen: QuietEvents
beforeEach(async () => {
  freshIndexedDb()
  seen = { blocked: 0, lost: 0, unreadable: [] }
  store = idbStore('test', seen)
  await enrolled(store)
})
afterEach(() => vi.restoreAllMocks())

const raw = (version = databaseVersion): Promise<IDBDatabase> =>
  new Promise((resolve, reject) => {
    const request = indexedDB.open('test', version)
    request.onsuccess = () => resolve(request.result)
    request.onerror = () => reject(request.error!)
  })

const lost = (): never => {
  throw new DOMException('Connection to Indexed Database server lost. Refresh the page to try again', 'UnknownError')
}

/** As a full disk shows: requests are taken, then the transaction is aborted. */
interface Abortable {
  _abort(name: string): void
}
const fullDisk = (times: number): void => {
  const real = IDBObjectStore.prototype.add
  vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...given) {
    const request = real.apply(this, given)
    if (times-- > 0) request.addEventListener('success', () => (this.transaction as unknown as Abortable)._abort('QuotaExceededError'))
    return request
  })
}

describe('the database on the phone', () => {
  test('a connection that the browser dropped is opened once more, and the entry is saved once', async () => {
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(lost)
    const first = await saved(appending(store), 'one')
    expect(await store.byIds([first.entry.id])).toHaveLength(1)
    expect(await store.count()).toBe(1)
  })

  test('a connection that breaks again is a fault, and what was saved before is still there', async () => {
    const first = await saved(appending(store), 'one')
    const broken = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(lost)
    await expect(saved(appending(store), 'two')).rejects.toMatchObject({ name: 'StoreFault', code: 'databaseLost' })
    broken.mockRestore()
    expect((await store.inTime({})).map(({ entry }) => entry.id)).toEqual([first.entry.id])
  })

  test('a database that does not open twice running is said to be damaged', async () => {
    const other = idbStore('damaged')
    vi.spyOn(indexedDB, 'open').mockImplementation(lost)
    await expect(other.count()).rejects.toMatchObject({ code: 'corrupt', where: 'open' })
  })

  test('a connection lost after the commit and before its answer saves the entry once', async () => {
    const real = IDBDatabase.prototype.transaction
    let answersToLose = 1
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...given) {
      const transaction = real.apply(this, given)
      if (given[1] !== 'readwrite' || answersToLose-- <= 0) return transaction
      const listen = transaction.addEventListener.bind(transaction) as (name: string, heard: () => void) => void
      // The first listeners are the store's; those that come later are the database's own.
      let onAbort: (() => void) | undefined
      const listenOtherwise = (name: string, heard: () => void): void => {
        listen(name, name === 'complete' && !onAbort ? () => onAbort!() : heard)
        if (name === 'abort') onAbort ??= heard
      }
      return Object.assign(transaction, { addEventListener: listenOtherwise })
    })
    const first = await saved(appending(store), 'one')
    expect((await store.inTime({})).map(({ entry }) => entry.id)).toEqual([first.entry.id])
    expect((await store.head())?.seq).toBe(1)
    expect(answersToLose).toBeLessThan(0)
  })

  test('with no room, photos that the server has are dropped and the entry is saved', async () => {
    await store.keepBlob({ sha256: hash.parse('1'.repeat(64)), bytes: new ArrayBuffer(9), of: (await saved(appending(store), 'one')).entry.id, sent: 1 })
    fullDisk(1)
    await saved(appending(store), 'two')
    expect((await store.head())?.seq).toBe(2)
    expect(await store.blob(hash.parse('1'.repeat(64)))).toBeUndefined()
  })

  test('with no room and nothing to drop the entry is not saved, which is a fault that says so; the rest is there', async () => {
    const first = await saved(appending(store), 'one')
    fullDisk(Infinity)
    await expect(saved(appending(store), 'two')).rejects.toMatchObject({ code: 'full' })
    expect((await store.inTime({})).map(({ entry }) => entry.id)).toEqual([first.entry.id])
    expect((await store.head())?.seq).toBe(1)
  })

  test('a value that cannot be stored undoes the whole transaction', async () => {
    const real = IDBObjectStore.prototype.put
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementationOnce(function (this: IDBObjectStore, _value, key) {
      return real.call(this, () => 'a function cannot be cloned', key)
    })
    await expect(saved(appending(store), 'one')).rejects.toMatchObject({ code: 'corrupt' })
    expect(await store.count()).toBe(0)
    expect((await store.waiting()).count).toBe(0)
  })

  test('a newer page may change the database while this one is open, and this one then asks to be reloaded', async () => {
    const newer = await raw(databaseVersion + 1)
    expect(seen.lost).toBe(1)
    await expect(saved(appending(store), 'one')).rejects.toMatchObject({ code: 'newerVersion' })
    newer.close()
  })

  test('a row that cannot be read does not hide the others, is reported, and stops the sending of its chain', async () => {
    const [first, second] = [await saved(appending(store), 'one'), await saved(appending(store), 'two')]
    const database = await raw()
    await new Promise((resolve) => {
      const request = database.transaction('entries', 'readwrite').objectStore('entries').put({ ...first, h: 'no hash' })
      request.onsuccess = resolve
    })
    database.close()
    expect((await store.inTime({})).map(({ entry }) => entry.id)).toEqual([second.entry.id])
    expect(seen.unreadable).toEqual([`entries/${first.entry.id}`])
    await expect(store.chain(first.entry.dev, 1, 10)).rejects.toMatchObject({ code: 'corrupt', where: 'entries' })
  })

  test('a row that cannot be read does not keep back what was written before it', async () => {
    const [first, second] = [await saved(appending(store), 'one'), await saved(appending(store), 'two')]
    const database = await raw()
    await new Promise((resolve) => {
      const request = database.transaction('entries', 'readwrite').objectStore('entries').put({ ...second, h: 'no hash' })
      request.onsuccess = resolve
    })
    database.close()
    expect((await store.chain(first.entry.dev, 1, 10)).map(({ entry }) => entry.id)).toEqual([first.entry.id])
    expect(await nextBatch(store, first.entry.dev, (await store.waiting()).oldest!)).toHaveLength(1)
  })
})
