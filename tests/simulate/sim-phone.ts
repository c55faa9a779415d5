import { IDBFactory } from 'fake-indexeddb'
import type { Clock } from '../../src/device/clock.ts'
import { instantWithOffset } from '../../src/device/clock.ts'
import type { Kept } from '../../src/device/kept.ts'
import type { Phone } from '../../src/device/open-phone.ts'
import type { Store } from '../../src/device/store.ts'
import type { PersonId } from '../../src/plan/ids.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { keepLab, type KeptLab } from '../../src/ui/boot/keep-lab.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { HandTimers, TabNews, testPhone } from '../device/laboratory.ts'
import { idbStore } from '../device/phone.ts'
import type { Network } from './network.ts'
import type { Random } from './seed.ts'

/** A phone's own clock: wrong by its own amount, and set now and then. */
export class WrongClock implements Clock {
  #bootedAt: number
  session: string
  constructor(
    private readonly lab: { now: number },
    private readonly random: Random,
    public aheadMs: number,
  ) {
    this.#bootedAt = lab.now
    this.session = this.#newSession()
  }
  wall = (): number => this.lab.now + this.aheadMs
  monotonic = (): number => this.lab.now - this.#bootedAt
  zone = (): string => 'Europe/Lisbon'
  offsetMinutes = (): number => 60
  starts(): void {
    this.#bootedAt = this.lab.now
    this.session = this.#newSession()
  }
  #newSession(): string {
    return Buffer.from(this.random.bytes(4)).toString('hex')
  }
}

/** A store that stops answering when its phone is switched off: what was asked before is done, what comes after never happened. */
const mortal = (store: Store): { store: Store; end(): void } => {
  let isDead = false
  const handler: ProxyHandler<Store> = {
    get: (target, name) => {
      const method = Reflect.get(target, name) as (...given: unknown[]) => unknown
      return (...given: unknown[]) => (isDead ? new Promise(() => undefined) : method.apply(target, given))
    },
  }
  return { store: new Proxy(store, handler), end: () => (isDead = true) }
}

/** Everything that one phone wrote, as its people saw it saved. */
export interface Written {
  id: EntryId
  h: string
  kind: string
}

/** A phone with its tabs, which can be switched off in the middle of anything. */
export class SimPhone {
  readonly written: Written[] = []
  readonly clock: WrongClock
  tabs: Phone[] = []
  lab!: KeptLab
  /** Exchanges that are under way. */
  readonly running = new Set<Promise<void>>()
  #life = 0
  #end: (() => void)[] = []

  constructor(
    readonly name: string,
    readonly person: PersonId,
    private readonly given: {
      network: Network
      random: Random
      labClock: { now: number }
      tabs: number
      store: Store
      aheadMs: number
      onFault(thrown: unknown): void
    },
  ) {
    this.clock = new WrongClock(given.labClock, given.random, given.aheadMs)
  }

  get store(): Store {
    return this.given.store
  }

  get first(): Phone {
    return this.tabs[0]!
  }

  async switchOn(): Promise<void> {
    const { network, random, store, tabs, onFault } = this.given
    this.clock.starts()
    const life = ++this.#life
    const news = new TabNews()
    const living = Array.from({ length: tabs }, () => mortal(store))
    this.#end = living.map(({ end }) => end)
    this.tabs = living.map(({ store: its }) =>
      testPhone({
        store: its, fetch: network.fetchOf(this.name), clock: this.clock, news: news.tab(), chance: () => random.chance(), randomBytes: random.bytes, timers: new HandTimers(),
        onFault: (thrown) => life === this.#life && onFault(thrown),
      }),
    )
    this.lab = await keepLab(this.first.book, this.clock.wall, onFault)
    await this.lab.whole
  }

  switchOff(): void {
    for (const end of this.#end) end()
    this.#life++
    this.running.clear()
    this.given.network.drop(this.name)
  }

  exchange(tab: Phone): void {
    if (tab.sender.state.isRunning) return
    const running: Promise<void> = tab.sender.sendNow().then(
      () => void this.running.delete(running),
      (thrown: unknown) => {
        this.running.delete(running)
        throw thrown
      },
    )
    this.running.add(running)
  }

  async append(tab: Phone, kind: Parameters<Phone['append']>[0], data: unknown): Promise<EntryId> {
    const appended = await tab.append(kind, data as never, { person: this.person })
    if (!appended.ok) throw new Error(`${this.name}: ${JSON.stringify(appended.refusal)}`)
    const { entry, h } = appended.saved
    this.written.push({ id: entry.id, h, kind })
    return entry.id
  }

  /** The wall clock on its screen, for a reading that was noted a while ago. */
  notedAt(msAgo: number): string {
    return instantWithOffset(this.clock.wall() - msAgo, 60)
  }

  rows(): Promise<Kept[]> {
    return this.store.inTime({})
  }
}

/** IndexedDB for some, the memory of the same contract for the others, which makes a run ten times as fast. */
export const simStore = (place: number): Store => {
  if (place % 10 !== 3) return new MemoryStore()
  globalThis.indexedDB = new IDBFactory()
  return idbStore(`phone-${place}`)
}
