import { describe, expect, test } from 'vitest'
import { StoreFault } from '../../src/device/faults.ts'
import { probeStore } from '../../src/device/probe-store.ts'
import { askToPersist, readStorage, storageReport } from '../../src/device/storage.ts'
import { MemoryStore } from '../contract/memory-store.ts'

describe('whether the record will stay on this phone', () => {
  test('a store that keeps nothing is found out before a round can start', async () => {
    const store = new MemoryStore()
    await expect(probeStore(store, 'mark')).resolves.toBeUndefined()
    store.take = () => Promise.resolve(undefined)
    await expect(probeStore(store, 'mark')).rejects.toMatchObject({ code: 'unavailable' })
    store.keep = () => Promise.reject(new DOMException('A mutation operation was attempted on a database that did not allow mutations.', 'InvalidStateError'))
    await expect(probeStore(store, 'mark')).rejects.toMatchObject({ code: 'unavailable' })
    store.keep = () => Promise.reject(new StoreFault('full', 'singles'))
    await expect(probeStore(store, 'mark')).rejects.toMatchObject({ code: 'full' })
  })

  test('four fifths of the room used is nearly full', async () => {
    const port = (usage: number) => ({ persisted: () => Promise.resolve(true), estimate: () => Promise.resolve({ usage, quota: 100 }) })
    expect(await readStorage(port(79))).toEqual({ persisted: true, usedBytes: 79, quotaBytes: 100, isNearlyFull: false })
    expect((await readStorage(port(80))).isNearlyFull).toBe(true)
    expect(await readStorage(undefined)).toEqual({ persisted: null, isNearlyFull: false })
    expect(storageReport(await readStorage(port(5)))).toEqual({ persisted: true, storage: { usedBytes: 5, quotaBytes: 100 } })
  })

  test('persistence is asked for once it is not given yet, and the answer is what it is', async () => {
    let asked = 0
    const port = (persisted: boolean, grants: boolean) => ({ persisted: () => Promise.resolve(persisted), persist: () => Promise.resolve(++asked > 0 && grants) })
    expect(await askToPersist(port(true, false))).toBe(true)
    expect(asked).toBe(0)
    expect(await askToPersist(port(false, false))).toBe(false)
    expect(await askToPersist(port(false, true))).toBe(true)
    expect(await askToPersist({})).toBeNull()
  })
})
