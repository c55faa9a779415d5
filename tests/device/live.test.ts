import { afterEach, expect, test } from 'vitest'
import { openLive, parseEvent } from '../../src/device/live.ts'
import type { LiveEvent } from '../../src/wire/live.ts'
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

test('an open board hears that another phone has sent something', async () => {
  lab = await Laboratory.open(clock)
  const [board, phone] = [0, 1].map(() => testPhone({ store: new MemoryStore(), fetch: lab!.fetch, clock })) as [ReturnType<typeof testPhone>, ReturnType<typeof testPhone>]
  await lab.letIn(board)
  await lab.letIn(phone)
  const heard: LiveEvent[] = []
  const live = openLive({ door: board.door, onEvent: (event) => heard.push(event), after: new HandTimers().after, chance: () => 0 })
  const until = async (isTrue: () => boolean): Promise<void> => {
    for (let tries = 0; tries < 200 && !isTrue(); tries++) await new Promise((resolve) => setTimeout(resolve, 10))
  }
  await until(() => heard.length > 0)
  await saved(phone.append, 'a')
  await phone.sender.sendNow()
  await until(() => heard.some(({ event, data }) => event === 'head' && 'gseq' in data && data.gseq === 1))
  expect(heard.filter(({ event }) => event === 'head').map(({ data }) => (data as { gseq: number }).gseq)).toEqual([0, 1])
  live.stop()
})

test('a server that is away is asked again, later each time', async () => {
  const timers = new HandTimers()
  let asked = 0
  const board = testPhone({ store: new MemoryStore(), clock, fetch: () => { asked++; return Promise.reject(new TypeError('Failed to fetch')) } })
  const live = openLive({ door: board.door, onEvent: () => undefined, after: timers.after, chance: () => 0.5 })
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
