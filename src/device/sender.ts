import * as z from 'zod/mini'
import type { Clock } from './clock.ts'
import type { Exchanged } from './exchange.ts'
import { StoreFault } from './faults.ts'
import type { Locks } from './locks.ts'
import { concernFor, type Concern } from './outbox.ts'
import { isLasting, type SendProblem } from './problems.ts'
import { parseSkew, skewNow } from './skew.ts'
import type { Store } from './store.ts'

export interface SendState {
  isRunning: boolean
  /** Entries on this phone that the server has not acknowledged. */
  waiting: number
  waitingPhotos: number
  /** Entries of others that the server still has for this phone, while they are being fetched. */
  toCome: number
  /** When the oldest of them was saved, ms since 1970. */
  oldestAt?: number
  /** When an exchange last came to its end. */
  lastExchangeAt?: number
  problem?: SendProblem
  concern: Concern
}

/** What makes the phone try: each at once, but for `saved`, which waits a moment for the next entry, and `minute`, which is the beat. */
export type Trigger = 'saved' | 'start' | 'online' | 'visible' | 'minute' | 'button' | 'live' | 'retry'

export interface Sender {
  readonly state: SendState
  subscribe(listener: (state: SendState) => void): () => void
  nudge(trigger: Trigger): void
  /** How far the exchange is. */
  tell(progress: { sent?: number; toCome?: number }): void
  /** Runs now, or waits for the run that is under way, and gives how things then stand. */
  sendNow(): Promise<SendState>
  /** The page is seen or not: the minute's beat goes on only while it is. */
  setVisible(isVisible: boolean): void
  /** Counts anew: another tab or the service worker has saved or sent something. */
  refresh(): Promise<void>
  stop(): void
}

export interface SenderParts {
  store: Store
  clock: Clock
  locks: Locks
  exchange(): Promise<Exchanged>
  /** Calls after so many ms; what it gives takes the call back. */
  after(milliseconds: number, work: () => void): () => void
  /** 0 ≤ chance < 1. */
  chance(): number
  /** A fault that is no store's: for the page's one handler. */
  onFault(thrown: unknown): void
}

const debounceMs = 250
const beatMs = 60_000
const firstBackoffMs = 2_000
const longestBackoffMs = 300_000

/** Full jitter: anywhere between nothing and the cap, so that the phones of a laboratory do not all come back in the same second. */
export const backoffMs = (failures: number, chance: number): number =>
  Math.floor(chance * Math.min(longestBackoffMs, firstBackoffMs * 2 ** Math.min(failures - 1, 20)))

const lastRow = z.looseObject({ at: z.optional(z.number()), problem: z.optional(z.looseObject({ code: z.string() })) })

const formerRow = z.looseObject({ unsent: z.number(), oldestAt: z.optional(z.number()), handedInto: z.optional(z.string()) })

/** One runner for all tabs and the service worker (Web Lock `sync`); when it tries, how long it rests, and what the screens are told. */
export const createSender = (parts: SenderParts): Sender => {
  const { store, clock, locks, after, chance, onFault } = parts
  const listeners = new Set<(state: SendState) => void>()
  let state: SendState = { isRunning: false, waiting: 0, waitingPhotos: 0, toCome: 0, concern: 'none' }
  let running: Promise<void> | undefined
  let isAskedAgain = false
  /** Somebody waits for the answer: the run takes its turn after another tab's, which may have begun before what is to be sent was saved. */
  let isAwaited = false
  let failures = 0
  let restUntil = 0
  let isVisible = true
  let isStopped = false
  let cancelSaved: (() => void) | undefined
  let cancelRetry: (() => void) | undefined
  let cancelBeat: (() => void) | undefined

  const show = (next: Partial<SendState>): void => {
    state = { ...state, ...next }
    for (const listener of listeners) listener(state)
  }

  const refresh = async (): Promise<void> => {
    const [waiting, photos, last, skew, formers] = await Promise.all([
      store.waiting(), store.unsentBlobs(), store.take('singles', 'exchange'), store.take('singles', 'skew'),
      store.keys('exports').then((devs) => Promise.all(devs.map((dev) => store.take('exports', dev)))),
    ])
    // What this phone had not sent while it was another device waits here too.
    const owed = formers.map((row) => formerRow.safeParse(row).data).filter((row) => row !== undefined && row.handedInto === undefined)
    const known = lastRow.safeParse(last).data
    const now = clock.wall() + (skewNow(clock, parseSkew(skew))?.ms ?? 0)
    const ages = [waiting.oldest?.savedAt, ...owed.map((row) => row?.oldestAt)].filter((age) => age !== undefined)
    const oldestAt = ages.length ? Math.min(...ages) : undefined
    const { oldestAt: _, lastExchangeAt: __, problem: ___, ...rest } = state
    state = rest
    show({
      waiting: waiting.count + owed.reduce((sum, row) => sum + (row?.unsent ?? 0), 0),
      waitingPhotos: photos.length,
      concern: concernFor(oldestAt, now),
      ...(oldestAt === undefined ? {} : { oldestAt }),
      ...(known?.at === undefined ? {} : { lastExchangeAt: known.at }),
      ...(known?.problem ? { problem: known.problem as SendProblem } : {}),
    })
  }

  const settle = async ({ problem }: Exchanged): Promise<void> => {
    failures = problem ? failures + 1 : 0
    await store.revise('singles', 'exchange', (raw) => {
      const before = lastRow.safeParse(raw).data
      const at = problem ? before?.at : clock.wall()
      return { ...(at === undefined ? {} : { at }), ...(problem ? { problem } : {}) }
    })
    if (!problem || isStopped) return
    const asked = problem.code === 'busy' && problem.retryAfterSeconds !== undefined ? problem.retryAfterSeconds * 1000 : 0
    const rest = Math.max(asked, isLasting(problem) ? longestBackoffMs : backoffMs(failures, chance()))
    restUntil = clock.monotonic() + asked
    cancelRetry?.()
    cancelRetry = after(rest, () => nudge('retry'))
  }

  const run = async (): Promise<void> => {
    show({ isRunning: true })
    try {
      do {
        isAskedAgain = false
        const turn = isAwaited ? locks.inTurn : locks.ifFree
        isAwaited = false
        const done = await turn('sync', parts.exchange)
        // Somebody else is at it: how it went will be read from the store.
        if (done) await settle(done)
      } while (isAskedAgain && failures === 0 && !isStopped)
      await refresh()
    } catch (thrown) {
      if (thrown instanceof StoreFault) show({ problem: { code: 'store', fault: thrown.code, where: thrown.where } })
      else onFault(thrown)
    } finally {
      running = undefined
      show({ isRunning: false, toCome: 0 })
    }
  }

  const begin = (): Promise<void> => {
    if (running) isAskedAgain = true
    else {
      cancelRetry?.()
      running = run()
    }
    return running!
  }

  const nudge = (trigger: Trigger): void => {
    if (isStopped) return
    if (trigger === 'saved') {
      cancelSaved?.()
      cancelSaved = after(debounceMs, () => nudgeNow())
      refresh().catch(onFault)
    } else if (trigger === 'button' || trigger === 'online' || trigger === 'start') {
      failures = 0
      restUntil = 0
      void begin()
    } else nudgeNow()
  }

  /** A server that asked to be left alone is left alone, but for the button. */
  const nudgeNow = (): void => {
    if (!isStopped && clock.monotonic() >= restUntil) void begin()
  }

  const beat = (): void => {
    cancelBeat?.()
    cancelBeat = undefined
    if (!isVisible || isStopped) return
    cancelBeat = after(beatMs, () => {
      nudge('minute')
      beat()
    })
  }
  beat()

  return {
    get state() {
      return state
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    nudge,
    tell: ({ sent = 0, toCome = state.toCome }) => show({ waiting: Math.max(0, state.waiting - sent), toCome }),
    async sendNow() {
      failures = 0
      restUntil = 0
      isAwaited = true
      await begin()
      return state
    },
    setVisible(seen) {
      const cameUp = seen && !isVisible
      isVisible = seen
      beat()
      if (cameUp) nudge('visible')
    },
    refresh,
    stop() {
      isStopped = true
      for (const cancel of [cancelSaved, cancelRetry, cancelBeat]) cancel?.()
    },
  }
}
