import { beforeEach, describe, expect, test } from 'vitest'
import type { Exchanged } from '../../src/device/exchange.ts'
import { concernFor } from '../../src/device/outbox.ts'
import { backoffMs, createSender, type Sender, type SendState } from '../../src/device/sender.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { HandTimers } from './laboratory.ts'
import { appending, enrolled, HandClock, saved } from './phone.ts'
import type { Locks } from '../../src/device/locks.ts'
import { noLocks } from '../../src/device/locks.ts'
import { StoreFault } from '../../src/device/faults.ts'

const nothing: Exchanged = { sent: 0, received: 0, regained: 0, photosSent: 0 }
const unreachable: Exchanged = { ...nothing, problem: { code: 'unreachable' } }

let store: MemoryStore
let clock: HandClock
let timers: HandTimers
let runs: number
let outcome: Exchanged | Error
let faults: unknown[]

beforeEach(async () => {
  store = new MemoryStore()
  await enrolled(store)
  clock = new HandClock()
  timers = new HandTimers()
  runs = 0
  outcome = nothing
  faults = []
})

const sender = (locks: Locks = noLocks): Sender =>
  createSender({
    store,
    clock,
    locks,
    after: timers.after,
    chance: () => 0.5,
    onFault: (thrown) => faults.push(thrown),
    exchange: () => {
      runs++
      return outcome instanceof Error ? Promise.reject(outcome) : Promise.resolve(outcome)
    },
  })
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 5))
const passes = async (milliseconds: number): Promise<void> => {
  clock.passes(milliseconds)
  timers.pass(milliseconds)
  await settled()
}

describe('when the phone sends', () => {
  test('a quarter of a second after a save, once for several entries', async () => {
    const it = sender()
    it.nudge('saved')
    await passes(200)
    it.nudge('saved')
    await passes(200)
    expect(runs).toBe(0)
    await passes(60)
    expect(runs).toBe(1)
  })

  test('at the start, when the network is back, when the page is seen again, and every minute while it is', async () => {
    const it = sender()
    it.nudge('start')
    await settled()
    it.nudge('online')
    await settled()
    it.setVisible(false)
    await passes(300_000)
    expect(runs).toBe(2)
    it.setVisible(true)
    await settled()
    expect(runs).toBe(3)
    await passes(60_000)
    await passes(60_000)
    expect(runs).toBe(5)
  })

  test('one run at a time; what is asked for meanwhile runs after it', async () => {
    const it = sender()
    it.nudge('start')
    it.nudge('live')
    it.nudge('live')
    await settled()
    expect(runs).toBe(2)
  })

  test('when another tab holds the lock nothing runs here, and its outcome is read from the store', async () => {
    await store.keep('singles', 'exchange', { at: 5, problem: { code: 'timeout' } })
    const it = sender({ inTurn: noLocks.inTurn, ifFree: () => Promise.resolve(undefined) })
    it.nudge('start')
    await settled()
    expect(it.state).toMatchObject({ lastExchangeAt: 5, problem: { code: 'timeout' } })
    expect(runs).toBe(0)
  })

  test('where somebody waits for the answer it takes its turn after the other tab, whose run may have begun too early', async () => {
    let letGo = (): void => undefined
    const others = new Promise<void>((resolve) => (letGo = resolve))
    const it = sender({ inTurn: (_, work) => others.then(work), ifFree: () => Promise.resolve(undefined) })
    const answer = it.sendNow()
    await settled()
    expect(runs).toBe(0)
    letGo()
    expect(await answer).toMatchObject({ lastExchangeAt: clock.wall() })
    expect(runs).toBe(1)
  })

  test('after a failure it rests, longer each time, up to five minutes, and a success ends that', async () => {
    outcome = unreachable
    const it = sender()
    it.setVisible(false)
    it.nudge('start')
    await settled()
    const rests: number[] = []
    for (let count = 0; count < 10; count++) {
      const [rest] = timers.delays
      rests.push(rest!)
      await passes(rest!)
    }
    expect(rests).toEqual([1000, 2000, 4000, 8000, 16000, 32000, 64000, 128000, 150000, 150000])
    outcome = nothing
    expect((await it.sendNow()).problem).toBeUndefined()
    expect(timers.delays).toEqual([])
    expect(backoffMs(1, 0)).toBe(0)
    expect(backoffMs(60, 0.999)).toBe(299_700)
  })

  test('a server that asks for a pause is left alone, but for the button', async () => {
    outcome = { ...nothing, problem: { code: 'busy', retryAfterSeconds: 120 } }
    const it = sender()
    it.nudge('start')
    await settled()
    it.nudge('saved')
    await passes(60_000)
    expect(runs).toBe(1)
    it.nudge('button')
    await settled()
    expect(runs).toBe(2)
    await passes(120_000)
    expect(runs).toBeGreaterThanOrEqual(3)
  })

  test('what only people can mend is not tried every two seconds', async () => {
    outcome = { ...nothing, problem: { code: 'fork', seq: 3 } }
    const it = sender()
    it.setVisible(false)
    it.nudge('start')
    await settled()
    expect(timers.delays).toEqual([300_000])
  })

  test('when stopped nothing is left running', async () => {
    const it = sender()
    it.nudge('saved')
    it.stop()
    it.nudge('button')
    await passes(600_000)
    expect([runs, timers.delays]).toEqual([0, []])
  })
})

describe('what the screens are told', () => {
  test('how many wait, since when, and how much that matters', async () => {
    const append = appending(store, { clock })
    const first = await saved(append, 'a')
    await saved(append, 'b')
    outcome = unreachable
    const it = sender()
    const seen: SendState[] = []
    it.subscribe((state) => seen.push(state))
    expect(await it.sendNow()).toEqual({ isRunning: false, waiting: 2, waitingPhotos: 0, toCome: 0, oldestAt: first.time, problem: { code: 'unreachable' }, concern: 'none' })
    expect(seen[0]?.isRunning).toBe(true)
    clock.passes(4 * 3_600_000)
    await it.refresh()
    expect(it.state.concern).toBe('warning')
    clock.passes(20 * 3_600_000)
    await it.refresh()
    expect(it.state.concern).toBe('alarm')
  })

  test('how many are left to go and to come while it runs, and nothing of that afterwards', async () => {
    const append = appending(store, { clock })
    for (const text of ['a', 'b', 'c']) await saved(append, text)
    const it = sender()
    await it.refresh()
    const seen: [number, number][] = []
    it.subscribe(({ waiting, toCome }) => seen.push([waiting, toCome]))
    it.tell({ sent: 2 })
    it.tell({ toCome: 500 })
    expect(seen).toEqual([[1, 0], [1, 500]])
    await it.sendNow()
    expect(it.state.toCome).toBe(0)
  })

  test('a warning at four hours and an alarm at twenty-four, counted from the oldest', () => {
    const hour = 3_600_000
    expect([undefined, 0, 4 * hour - 1, 4 * hour, 24 * hour - 1, 24 * hour].map((age) => concernFor(age === undefined ? undefined : 1000, 1000 + (age ?? 0)))).toEqual([
      'none', 'none', 'none', 'warning', 'warning', 'alarm',
    ])
  })

  test('when an exchange last succeeded is remembered through a restart and through failures', async () => {
    await sender().sendNow()
    const at = clock.now
    clock.passes(1000)
    outcome = unreachable
    expect(await sender().sendNow()).toMatchObject({ lastExchangeAt: at, problem: { code: 'unreachable' } })
    const again = sender()
    await again.refresh()
    expect(again.state).toMatchObject({ lastExchangeAt: at, problem: { code: 'unreachable' } })
  })

  test('a fault of the store is said; any other goes to the handler of faults', async () => {
    outcome = new StoreFault('databaseLost', 'outbox')
    const it = sender()
    expect((await it.sendNow()).problem).toEqual({ code: 'store', fault: 'databaseLost', where: 'outbox' })
    outcome = new Error('a bug')
    await it.sendNow()
    expect(faults).toEqual([outcome])
    expect(it.state.isRunning).toBe(false)
  })
})
