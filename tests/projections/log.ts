import type { CheckId, MachineId, PersonId } from '../../src/plan/ids.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { judge } from '../../src/plan/limits.ts'
import { Lab } from '../../src/projections/lab.ts'
import type { Arrived } from '../../src/projections/line.ts'
import type { Envelope } from '../../src/record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../../src/record/ids.ts'
import type { DataOf, Kind } from '../../src/record/kinds.ts'

export const minute = 60_000
export const hour = 60 * minute

export const phone = (name: string): DeviceId => name.padStart(16, '0') as DeviceId

/** A made-up id of the right form, the same for the same number. */
export const idOf = (number: number): EntryId => `00000000-0000-7000-8000-${number.toString(16).padStart(12, '0')}` as EntryId
export const hashOf = (number: number): Hash => number.toString(16).padStart(64, '0') as Hash

interface Said<K extends Kind> {
  kind: K
  data: DataOf<K>
  at: number
  dev?: DeviceId
  person?: string
  skewMilliseconds?: number
  recvAt?: number
}

/** Writes entries as phones would: one chain a device, ids in order of writing. Nothing is signed: projections do not look at that. */
export class Log {
  readonly arrived: Arrived[] = []
  #seq = new Map<DeviceId, number>()
  #number = 0

  say<K extends Kind>({ kind, data, at, dev = phone('a'), person = 'marta', skewMilliseconds, recvAt }: Said<K>): EntryId {
    const seq = (this.#seq.get(dev) ?? 0) + 1
    this.#seq.set(dev, seq)
    const number = ++this.#number
    const entry: Envelope = {
      v: 1,
      id: idOf(number),
      dev,
      seq,
      prev: hashOf(0),
      kind,
      at: new Date(at).toISOString(),
      tz: 'Europe/Lisbon',
      sess: '00000000',
      mono: Math.max(0, at),
      skew: skewMilliseconds === undefined ? null : { ms: skewMilliseconds, within: 50 },
      op: person,
      data: JSON.parse(JSON.stringify(data)) as Record<string, unknown>,
      blobs: [],
    }
    this.arrived.push({ entry, h: hashOf(number), ...(recvAt === undefined ? {} : { recvAt }) })
    return entry.id
  }

  lab(): Lab {
    const lab = new Lab()
    lab.add(this.arrived)
    return lab
  }
}

/** A log of one laboratory, with short words for what is said most. */
export class LabLog extends Log {
  readonly plan: LabPlan
  readonly planId: EntryId

  constructor(plan: LabPlan, from: number, effectiveFrom = from) {
    super()
    this.plan = plan
    this.planId = this.say({ kind: 'plan', data: { plan, effectiveFrom }, at: from, person: 'helena' })
  }

  run(machine: string, state: DataOf<'run'>['state'], at: number, metresPerMinute?: number): EntryId {
    return this.say({ kind: 'run', data: { machine: machine as MachineId, state, ...(metresPerMinute === undefined ? {} : { metresPerMinute }) }, at })
  }

  readingData(check: string, value: number, more: Partial<DataOf<'reading'>> = {}): DataOf<'reading'> {
    const found = this.plan.checks.find(({ id }) => id === check)
    if (found?.kind !== 'reading') throw new Error(`no reading ${check}`)
    return {
      check: check as CheckId, plan: this.planId, value, keyed: String(value), unit: found.unit, how: 'keyed', verdict: judge(found.limits, value).verdict, ...more,
    }
  }

  reading(check: string, value: number, at: number, more: Partial<DataOf<'reading'>> = {}, said: { dev?: DeviceId; person?: string } = {}): EntryId {
    return this.say({ kind: 'reading', data: this.readingData(check, value, more), at, ...said })
  }

  look(check: string, right: boolean, at: number): EntryId {
    return this.say({ kind: 'look', data: { check: check as CheckId, plan: this.planId, right }, at })
  }

  strip(check: string, verdict: 'IN' | 'WARN' | 'ACT', at: number): EntryId {
    return this.say({ kind: 'strip', data: { check: check as CheckId, plan: this.planId, densities: {}, figures: { baseFog: 0.25, speed: -2.1, gamma: 0.65 }, verdict }, at })
  }

  acid(exception: EntryId | undefined, at: number, more: Partial<DataOf<'add'>> = {}, said: { dev?: DeviceId } = {}): EntryId {
    return this.say({
      kind: 'add',
      data: {
        station: 'neg-1-fix' as never, material: 'acetic-acid-28' as never, portion: 1, poured: { amount: 2350, unit: 'mL', keyed: '2350' }, mixSeconds: 720,
        ...(exception ? { exception } : {}), ...more,
      },
      at, ...said,
    })
  }
}

export const person = (id: string): PersonId => id as PersonId

/** The demo laboratory with a few of its checks: enough for most logs, and quick to parse many times over. */
export const smallPlan = (plan: LabPlan, ...checks: string[]): LabPlan => ({
  ...plan,
  checks: plan.checks.filter(({ id }) => checks.includes(id)),
  methods: [],
})
