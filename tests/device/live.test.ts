import { afterEach, expect, test } from 'vitest'
import { openLive, parseEvent } from '../../src/device/live.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { HandTimers, Laboratory, testPhone } from './laboratory.ts'
import { HandClock, saved } from './phone.ts'

const clock = new HandClock()
let lab: Laboratory | undefined
afterEach(() => lab?.close())

test('events are read as the wire has them, and signs of life or later events are none', () => {
  expect(parseEvent('event: head\ndata: {"gseq":3,"epoch":"e"}')).toEqual({ event: 'head', data: { gseq: 3, epoch: 'e' } })
  expect(parseEvent(': still here')).toBeUndefined()
  expect(parseEvent('event: weather\ndata: {}')).toBeUndefined()
  expect(parseEvent('event: head\ndata: {"gseq":')).toBeUndefined()
})

/** Polls, as the server is a real one; gives up after some seconds, and the expectation that follows says what is missing. */
const until = async (isTrue: () => boolean): Promise<void> => {
  for (let tries = 0; tries < 500 && !isTrue(); tries++) await new Promise((resolve) => setTimeout(resolve, 10))
}

test('an open board hears that another phone has sent something', async () => {
  lab = await Laboratory.open(clock)
  const [board, phone] = [0, 1].map(() => testPhone({ store: new MemoryStore(), fetch: lab!.fetch, clock })) as [ReturnType<typeof testPhone>, ReturnType<typeof testPhone>]
  await lab.letIn(board)
  await lab.letIn(phone)
  let heard = 0
  const live = openLive({ door: board.door, onNews: () => heard++, after: new HandTimers().after, chance: () => 0 })
  await until(() => heard === 1)
  await saved(phone.append, 'a')
  await phone.sender.sendNow()
  await until(() => heard === 2)
  expect(heard).toBe(2)
  live.stop()
})

test('two open boards come to rest: what they report of themselves calls forth no further exchange', async () => {
  lab = await Laboratory.open(clock)
  const exchanges = [0, 0]
  const boards = exchanges.map(() => testPhone({ store: new MemoryStore(), fetch: lab!.fetch, clock }))
  for (const board of boards) await lab.letIn(board)
  const lives = boards.map((board, index) =>
    openLive({ door: board.door, onNews: () => { exchanges[index]!++; void board.sender.sendNow() }, after: new HandTimers().after, chance: () => 0 }),
  )
  await until(() => exchanges.every((count) => count === 1))
  await saved(boards[0]!.append, 'a')
  await boards[0]!.sender.sendNow()
  await until(() => exchanges.every((count) => count === 2))
  // Long enough for some dozens of rounds of the loop that this once was.
  await new Promise((resolve) => setTimeout(resolve, 1500))
  expect(exchanges).toEqual([2, 2])
  for (const live of lives) live.stop()
})

test('a server that is away is asked again, later each time', async () => {
  const timers = new HandTimers()
  let asked = 0
  const board = testPhone({ store: new MemoryStore(), clock, fetch: () => { asked++; return Promise.reject(new TypeError('Failed to fetch')) } })
  const live = openLive({ door: board.door, onNews: () => undefined, after: timers.after, chance: () => 0.5 })
  const rests: number[] = []
  for (let count = 0; count < 4; count++) {
    await new Promise((resolve) => setTimeout(resolve, 5))
    const rest = timers.delays[0]!
    rests.push(rest)
    timers.pass(rest)
  }
  expect(rests).toEqual([2000, 3000, 5000, 9000])
  expect(asked).toBeGreaterThanOrEqual(4)
  live.stop()
})
