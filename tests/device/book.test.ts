import { beforeEach, describe, expect, test } from 'vitest'
import { createBook } from '../../src/device/book.ts'
import type { Kept } from '../../src/device/kept.ts'
import { createNews } from '../../src/device/news.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { noNews, TabNews } from './laboratory.ts'
import { appending, enrolled, HandClock, saved } from './phone.ts'

let store: MemoryStore
const clock = new HandClock()
const fail = (thrown: unknown): never => {
  throw thrown
}
beforeEach(async () => {
  store = new MemoryStore()
  await enrolled(store)
})
const write = (text: string): ReturnType<typeof saved> => {
  clock.passes(1000)
  return saved(appending(store, { clock }), text)
}

describe('the record as the projections read it', () => {
  test('from a time on in the order of display, and backwards for scrolling', async () => {
    const [one, two, three] = [await write('1'), await write('2'), await write('3')]
    const book = createBook(store, noNews(), fail)
    expect(await book.since(two.time)).toEqual([two, three])
    expect(await book.before(two.time, 5)).toEqual([two, one])
  })

  test('what another tab saved is told here, read from the store', async () => {
    const tabs = new TabNews()
    const [here, there] = [createBook(store, tabs.tab(), fail), createBook(store, tabs.tab(), fail)]
    const heard: Kept[][] = []
    here.onEntries((rows) => heard.push(rows))
    const one = await write('1')
    there.tell([one])
    await new Promise((resolve) => setTimeout(resolve))
    expect(heard).toEqual([[one]])
  })

  test('a fold kept from the last time is of no use to other projections', async () => {
    const book = createBook(store, noNews(), fail)
    await book.keepSnapshot('lab', { version: 'p1', upTo: 5, state: { open: 2 } })
    expect(await book.snapshot('lab', 'p1')).toEqual({ version: 'p1', upTo: 5, state: { open: 2 } })
    expect(await book.snapshot('lab', 'p2')).toBeUndefined()
  })

  test('the channel between tabs carries ids and lets nothing else through', async () => {
    const [one, other, stranger] = [createNews('test-news'), createNews('test-news'), new BroadcastChannel('test-news')]
    const heard: string[][] = []
    other.listen((ids) => heard.push(ids))
    one.tell([])
    for (const message of [null, 'x', { entries: 'x' }, { entries: [1, null] }]) stranger.postMessage(message)
    one.tell((await write('1')) && [(await store.inTime({}))[0]!.entry.id])
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(heard).toEqual([[(await store.inTime({}))[0]!.entry.id]])
    one.close()
    other.close()
    stranger.close()
  })
})
