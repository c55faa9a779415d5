import { demoLab } from '../../src/demo/lab.ts'
import { Lab } from '../../src/projections/lab.ts'
import type { Arrived } from '../../src/projections/line.ts'
import type { CheckId, PersonId } from '../../src/plan/ids.ts'
import { judge } from '../../src/plan/limits.ts'
import type { Envelope } from '../../src/record/entry.ts'
import type { EntryId, Hash } from '../../src/record/ids.ts'
import { setDeviceState } from '../../src/server/database/devices.ts'
import { verifyRecord } from '../../src/server/verify/verify-record.ts'
import { MemoryStore } from '../contract/memory-store.ts'
import { Laboratory } from '../device/laboratory.ts'
import { smallPlan } from '../projections/log.ts'
import { Network, type Fate } from './network.ts'
import { Random } from './seed.ts'
import { SimPhone, simStore } from './sim-phone.ts'

const minute = 60_000
const phones = 20
const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-dev-temp', 'neg-1-scratches')
const operators = plan.people.filter(({ role }) => role === 'operator').map(({ id }) => id)
const supervisor = plan.people.find(({ role }) => role === 'supervisor')!.id

/** Of a hundred requests. */
const badWeather: Record<Fate, number> = { arrives: 60, requestLost: 10, answerLost: 12, answerCut: 6, sentTwice: 5, serverBusy: 4, portal: 3 }

export interface Story {
  seed: number
  steps: number
}

/** What happened, and what was found at the end. All lists are empty where all is well. */
export interface Outcome {
  seed: number
  steps: string[]
  did: Record<string, number>
  written: number
  /** Saved on a phone, and not in the record exactly once (nor kept aside, where the phone had written two histories). */
  lost: string[]
  double: string[]
  /** Phones on which something still waits. */
  waiting: string[]
  /** Phones that tell another laboratory than the server's record does, and where. */
  otherwise: string[]
  record: unknown
  faults: string[]
}

const difference = (a: unknown, b: unknown, path = ''): string | undefined => {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return Object.is(a, b) ? undefined : `${path}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`
  for (const key of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const found = difference((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key], `${path}/${key}`)
    if (found) return found
  }
  return undefined
}
const told = (lab: Lab): unknown => JSON.parse(JSON.stringify({ state: lab.state, lines: lab.ledger.lines }))

/** One laboratory from a seed: phones, a network, a server over a real file. */
class Simulation {
  readonly random: Random
  readonly clock = { now: Date.UTC(2026, 0, 12, 5) }
  readonly steps: string[] = []
  readonly did: Record<string, number> = {}
  readonly faults: string[] = []
  readonly phones: SimPhone[] = []
  /** Those that have written two histories, from one profile. */
  readonly twins = new Set<SimPhone>()
  readonly backups: string[] = []
  readonly ids: EntryId[] = []
  planEntry!: EntryId
  server!: Laboratory
  network!: Network

  constructor(readonly story: Story) {
    this.random = new Random(story.seed)
  }

  note(what: string): void {
    this.steps.push(what)
    const [word] = what.split(' ')
    this.did[word!] = (this.did[word!] ?? 0) + 1
  }

  async begin(): Promise<void> {
    this.server = await Laboratory.open(this.clock, (count) => this.random.bytes(count))
    this.network = new Network((path, init) => this.server.fetch(path, init))
    await this.quietly(async () => {
      for (let place = 0; place < phones; place++) {
        const phone = this.phone(`p${place}`, place, place === 0 ? supervisor : operators[place % operators.length]!, simStore(place))
        await phone.switchOn()
        await this.server.letIn(phone.first, phone.name)
      }
      const [first] = this.phones
      this.planEntry = await first!.append(first!.first, 'plan', { plan, effectiveFrom: this.clock.now - minute })
      await first!.append(first!.first, 'run', { machine: 'neg-1', state: 'running', metresPerMinute: 30.48 })
      for (const phone of this.phones) await phone.first.sender.sendNow()
    })
    this.backups.push(await this.server.backUp())
  }

  phone(name: string, place: number, person: PersonId, store: ReturnType<typeof simStore>): SimPhone {
    const phone = new SimPhone(name, person, {
      network: this.network, random: this.random, labClock: this.clock, tabs: place % 4 === 1 ? 2 : 1, store, aheadMs: this.random.between(-180_000, 180_000),
      onFault: (thrown) => this.faults.push(`${name}: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`),
    })
    this.phones.push(phone)
    return phone
  }

  /** With every request answered at once. */
  async quietly(work: () => Promise<void>): Promise<void> {
    this.network.isGood = true
    await work()
    this.network.isGood = false
  }

  /** Until each exchange waits for the network or has ended: from the same seed, every run then takes the same steps. */
  async settle(): Promise<void> {
    const isSettled = (): boolean => this.phones.reduce((sum, { running }) => sum + running.size, 0) === this.network.waiting
    const from = performance.now()
    for (let calm = 0; calm < 4; ) {
      if (performance.now() - from > 60_000) throw new Error(`the simulation hangs: ${this.network.waiting} requests, ${this.phones.filter(({ running }) => running.size).map(({ name }) => name).join()}`)
      await new Promise((resolve) => setImmediate(resolve))
      calm = isSettled() ? calm + 1 : 0
    }
  }

  async write(phone: SimPhone): Promise<void> {
    const tab = this.random.of(phone.tabs)
    const target = this.ids.length ? this.random.of(this.ids) : undefined
    const what = this.random.weighted({ note: 5, reading: 8, noted: 3, look: 3, amend: target ? 2 : 0, withdraw: target ? 1 : 0 })
    const reading = (): Record<string, unknown> => {
      const check = this.random.of(plan.checks.filter((it) => it.kind === 'reading'))
      const value = Math.round((check.limits.aim! + (this.random.chance() - 0.5) * 0.8) * 100) / 100
      return { check: check.id, plan: this.planEntry, value, keyed: String(value), unit: check.unit, how: 'keyed', verdict: judge(check.limits, value).verdict }
    }
    const data = {
      note: () => ({ text: `by ${phone.name} at ${this.clock.now}`, about: 'general' }),
      reading,
      noted: () => ({ ...reading(), notedAt: phone.notedAt(this.random.below(40) * minute) }),
      look: () => ({ check: 'neg-1-scratches' as CheckId, plan: this.planEntry, right: this.random.chance() < 0.8 }),
      // Of whomever: the server refuses to count what an operator changes of another's.
      amend: () => ({ ref: target!, data: reading(), why: 'misread' }),
      withdraw: () => ({ ref: target!, why: 'twice' }),
    }[what]()
    const kind = what === 'noted' ? 'reading' : what
    const id = await phone.append(tab, kind, data)
    if (kind === 'reading') this.ids.push(id)
    if (this.ids.length > 30) this.ids.shift()
    this.note(`write ${phone.name} ${kind}`)
  }

  async step(): Promise<void> {
    this.clock.now += this.random.below(40_000)
    const phone = this.random.of(this.phones)
    const what = this.random.weighted({
      write: 30, exchange: 25, network: 90, setClock: 1, switchOff: 2, restartServer: 0.6, backUp: 0.3, restore: this.did['restore'] === 4 ? 0 : 0.5,
      twin: this.twins.size || this.steps.length < this.story.steps / 4 ? 0 : 4, supervise: 3,
    })
    switch (what) {
      case 'write':
        return this.write(phone)
      case 'exchange':
        this.note(`exchange ${phone.name}`)
        phone.exchange(this.random.of(phone.tabs))
        return this.settle()
      case 'network': {
        if (!this.network.waiting) return
        const fate = this.random.weighted(badWeather)
        this.note(`network ${fate}`)
        await this.network.releaseOne(this.random, fate)
        return this.settle()
      }
      case 'setClock':
        phone.clock.aheadMs += this.random.between(-7_200_000, 7_200_000)
        return this.note(`setClock ${phone.name}`)
      case 'switchOff':
        this.note(`switchOff ${phone.name}`)
        phone.switchOff()
        await phone.switchOn()
        return this.settle()
      case 'restartServer':
        this.note('restartServer')
        this.network.drop()
        await this.settle()
        return this.server.restart()
      case 'backUp':
        this.note('backUp')
        this.network.drop()
        await this.settle()
        this.backups.push(await this.server.backUp())
        return
      case 'restore': {
        const isAnnounced = this.random.chance() < 0.5
        this.note(`restore ${isAnnounced ? 'announced' : 'unannounced'}`)
        this.network.drop()
        await this.settle()
        return this.server.restore(this.random.of(this.backups.slice(-3)), isAnnounced)
      }
      case 'twin':
        return this.twin()
      case 'supervise':
        return this.supervise()
    }
  }

  /** A profile is copied to another phone, and both go on writing. */
  async twin(): Promise<void> {
    const candidates = this.phones.filter(({ store, running }) => store instanceof MemoryStore && !running.size)
    const original = candidates[this.random.below(candidates.length)]
    if (!original) return
    const copy = this.phone(`twin of ${original.name}`, 0, original.person, (original.store as MemoryStore).copy())
    await copy.switchOn()
    this.twins.add(original).add(copy)
    this.note(`twin ${original.name}`)
    for (const phone of [original, copy]) for (let more = 0; more < 3; more++) await this.write(phone)
  }

  /** The supervisor lets in again whom the server has put into the waiting room, and gives phones that wrote two histories a new code. */
  async supervise(): Promise<void> {
    const waiting = await this.server.database.sql.selectFrom('devices').select('dev').where('state', '=', 'waiting').execute()
    for (const { dev } of waiting) await setDeviceState(this.server.database.sql, dev, 'enrolled')
    for (const phone of this.phones) {
      const problem = ((await phone.store.take('singles', 'exchange')) as { problem?: { code: string } } | undefined)?.problem?.code
      if (problem !== 'fork' && problem !== 'quarantined') continue
      if (phone.running.size) continue
      this.note(`enrolAnew ${phone.name}`)
      await this.quietly(() => this.server.letIn(phone.first, phone.name))
      // As when the page is loaded anew after that.
      await phone.store.remove('singles', 'exchange')
    }
  }

  /** The storm is over: everybody comes back to the network, again and again. */
  async calm(): Promise<void> {
    this.network.isGood = true
    this.network.drop()
    for (let round = 0; round < 12; round++) {
      await this.supervise()
      this.network.isGood = true
      for (const phone of this.phones) for (const tab of phone.tabs) await tab.sender.sendNow()
    }
  }

  async outcome(): Promise<Outcome> {
    const { sql } = this.server.database
    const entries = await sql.selectFrom('entries').select(['id', 'h', 'body', 'gseq', 'recv_at', 'status']).orderBy('gseq').execute()
    const asides = new Set((await sql.selectFrom('asides').select('h').execute()).map(({ h }) => h))
    const times = new Map<string, number>()
    for (const { id } of entries) times.set(id, (times.get(id) ?? 0) + 1)
    const lost: string[] = []
    const double: string[] = []
    for (const phone of this.phones)
      for (const { id, h, kind } of phone.written) {
        const count = times.get(id) ?? 0
        if (count > 1) double.push(`${phone.name} ${kind} ${id}`)
        if (count === 0 && !(this.twins.has(phone) && asides.has(h as Hash))) lost.push(`${phone.name} ${kind} ${id}`)
      }
    const serverLab = new Lab()
    serverLab.add(
      entries.map(({ body, h, gseq, recv_at, status }): Arrived => ({ entry: JSON.parse(body) as Envelope, h: h as Hash, gseq, recvAt: recv_at, status })),
    )
    const wanted = told(serverLab)
    const otherwise: string[] = []
    const waiting: string[] = []
    for (const phone of this.phones) {
      await phone.first.sender.refresh()
      const { waiting: count, problem } = phone.first.sender.state
      if (count || problem) waiting.push(`${phone.name}: ${count} ${problem ? JSON.stringify(problem) : ''}`)
      const whole = new Lab()
      whole.add((await phone.first.book.since(0)).map(({ entry, h, gseq, recvAt }) => ({ entry, h, gseq, recvAt })))
      const afresh = difference(told(whole), wanted)
      if (afresh) otherwise.push(`${phone.name}, started anew: ${afresh.slice(0, 400)}`)
      const open = difference(told(phone.lab.lab.value.log), wanted)
      if (open) otherwise.push(`${phone.name}, as its page stands open: ${open.slice(0, 400)}`)
    }
    const record = await this.server.database.snapshot(verifyRecord)
    await this.server.close()
    return { seed: this.story.seed, steps: this.steps, did: this.did, written: this.phones.reduce((sum, { written }) => sum + written.length, 0), lost, double, waiting, otherwise, record, faults: this.faults }
  }
}

export const simulate = async (story: Story): Promise<Outcome> => {
  const simulation = new Simulation(story)
  await simulation.begin()
  for (let step = 0; step < story.steps; step++) await simulation.step()
  await simulation.calm()
  return simulation.outcome()
}
