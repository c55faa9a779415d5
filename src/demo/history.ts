import type { Check, LookCheck, ReadingCheck, StripCheck } from '../plan/check.ts'
import { machineOf, placeOf } from '../plan/find.ts'
import type { CheckId, MachineId, PersonId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judge } from '../plan/limits.ts'
import type { Machine } from '../plan/machine.ts'
import { shiftAt } from '../plan/shift-time.ts'
import { dueAtMachine } from '../projections/due.ts'
import { Lab } from '../projections/lab.ts'
import { stripInFor, stripTimes } from '../rounds/strip/times.ts'
import type { DeviceId, EntryId } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'
import { BathModel, decimalsOf } from './bath-model.ts'
import { demoDose } from './corrections.ts'
import { arrivedFrom, type Draft, type DraftOf } from './draft.ts'
import { randomFrom, type Random } from './random.ts'
import { tellStories, type Story } from './stories.ts'
import { demoStripBatch, wedgeStrip } from './strips.ts'

const minute = 60_000
const roundEvery = 30 * minute

export interface HistoryAsked {
  seed: number
  plan: LabPlan
  /** The entry that put the plan in force. */
  planEntry: EntryId
  /** The present. The last half hour before it is empty, so that there is something to do. */
  until: number
  /** Whole shifts before the one that holds `until`. */
  shifts?: number
}

/**
 * What an invented laboratory did in the shifts before now: rounds in the order of the film's path, baths that drift, exceptions with their
 * adds and re-checks, strips, notes, a hold, a machine that stood still for a while. Each round does what the projection says is due, so
 * that the history is one that the product itself would have asked for.
 *
 * @example demoHistory({ seed: 7, plan, planEntry, until, shifts: 3 })[0].kind // 'run'
 */
export const demoHistory = ({ seed, plan, planEntry, until, shifts = 3 }: HistoryAsked): Draft[] => {
  let from = shiftAt(plan, until).from
  for (let back = 0; back < shifts; back++) from = shiftAt(plan, from - 1).from
  for (let end = until - roundEvery; ; end -= roundEvery) {
    const teller = new Teller(seed, plan, planEntry)
    teller.start(from)
    for (let time = from + 5 * minute; time <= end; time += roundEvery) teller.round(time, end)
    // A correction that is not over yet would stay half told: then the last round was the one before.
    const told = teller.drafts.filter(({ time }) => time <= until)
    if (told.length === teller.drafts.length || end < from) return told.sort((a, b) => a.time - b.time)
  }
}

/** A device that no server ever enrolled: its entries are folded here and nowhere kept. */
const nobodysPhone = 'd'.repeat(16) as DeviceId

class Teller {
  readonly drafts: Draft[] = []
  readonly random: Random
  readonly model: BathModel
  readonly plan: LabPlan
  readonly planEntry: EntryId
  readonly #lab = new Lab()
  readonly #stories: Story[]

  constructor(seed: number, plan: LabPlan, planEntry: EntryId) {
    this.random = randomFrom(seed)
    this.model = new BathModel(this.random)
    this.plan = plan
    this.planEntry = planEntry
    this.#stories = tellStories(plan)
  }

  start(time: number): void {
    const plan = { id: this.planEntry, kind: 'plan', data: { plan: this.plan, effectiveFrom: time }, person: this.personAt(time), time } as const
    this.#lab.add(arrivedFrom([plan], nobodysPhone))
    for (const check of this.plan.checks) if (check.kind === 'strip' && check.steps) this.say('stripBatch', demoStripBatch(check), time)
    for (const machine of this.plan.machines) {
      this.say('run', { machine: machine.id, state: 'startUp' }, time + minute)
      this.say('run', { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute }, time + 45 * minute)
    }
  }

  say<K extends Kind>(kind: K, data: DataOf<K>, time: number): DraftOf<K> {
    const draft = { id: this.random.id(time), kind, data, person: this.personAt(time), time } as DraftOf<K>
    this.#lab.add(arrivedFrom([draft as Draft], nobodysPhone, this.drafts.length + 2))
    this.drafts.push(draft as Draft)
    return draft
  }

  /** Operators take turns, shift by shift. */
  personAt(time: number): PersonId {
    const operators = this.plan.people.filter(({ role }) => role === 'operator')
    const index = this.plan.shifts.findIndex(({ id }) => id === shiftAt(this.plan, time).shift.id)
    return (operators[index % Math.max(1, operators.length)] ?? this.plan.people[0]!).id
  }

  round(start: number, end: number): void {
    for (const story of this.#stories) story(this, start, end)
    let time = start
    for (const machine of this.plan.machines) {
      const due = dueAtMachine(this.#lab.state, this.plan, machine, start).filter(({ dueAt }) => dueAt <= start + 10 * minute)
      const round = this.random.id(time)
      for (const { check } of due) {
        time += (8 + 10 * this.random.unit()) * 1000
        this.#do(check, Math.floor(time), round, machine)
      }
    }
  }

  #do(check: Check, time: number, round: string, machine: Machine): void {
    switch (check.kind) {
      case 'reading':
        return this.read(check, this.model.read(check), time, { round, atTank: true, stationSeconds: 12 })
      case 'look':
        return void this.look(check, true, time, round)
      case 'strip':
        return void this.say('strip', { ...wedgeStrip(check, this.planEntry, this.random), ...this.#stripTimes(machine, time), round }, time + machineLag(machine))
    }
  }

  look(check: LookCheck, right: boolean, time: number, round?: string): EntryId {
    return this.say('look', { check: check.id, plan: this.planEntry, right, ...(round ? { round } : {}) }, time).id
  }

  strip(check: StripCheck, off: number, time: number, repeatOf?: EntryId): EntryId {
    const { machine } = placeOf(this.plan, check.station)
    const times = this.#stripTimes(machine, stripInFor(this.#lab.state.machines[machine.id], machine, time))
    return this.say('strip', { ...wedgeStrip(check, this.planEntry, this.random, off), ...times, ...(repeatOf ? { repeatOf } : {}) }, time).id
  }

  #stripTimes(machine: Machine, stripIn: number): Pick<DataOf<'strip'>, 'stripIn' | 'bathTime'> {
    const { developer } = stripTimes(this.#lab.state.machines[machine.id], machine, stripIn)
    return { stripIn: new Date(stripIn).toISOString(), ...(developer ? { bathTime: new Date(developer.middle).toISOString() } : {}) }
  }

  /** A reading, and what follows where it is out: the repeat, and if that agrees the correction up to its re-check. */
  read(check: ReadingCheck, value: number, time: number, more: Partial<DataOf<'reading'>>): void {
    const first = this.#reading(check, value, time, more)
    if (first.data.verdict !== 'ACT') return
    const repeat = this.#reading(check, this.model.again(check), time + 2 * minute, { repeatOf: first.id })
    if (repeat.data.verdict === 'ACT') this.#correct(check, first.id, repeat.data.value, time + 3 * minute)
  }

  #reading(check: ReadingCheck, value: number, time: number, more: Partial<DataOf<'reading'>>): DraftOf<'reading'> {
    const data = {
      check: check.id, plan: this.planEntry, value, keyed: value.toFixed(decimalsOf(check.step)), unit: check.unit, how: check.method ? 'worked' : 'keyed',
      verdict: judge(check.limits, value).verdict, ...more,
    } as const
    return this.say('reading', data, time)
  }

  #correct(check: ReadingCheck, exception: EntryId, found: number, at: number): void {
    let time = at
    let value = found
    for (let portion = 1; portion <= 4 && judge(check.limits, value).verdict !== 'IN'; portion++) {
      const dose = demoDose(this.plan, check, value)
      const { station, machine } = placeOf(this.plan, check.station)
      if (dose) {
        const caution = this.say('caution', { card: dose.material.caution, version: 1, material: dose.material.id, station: station.id, exception, lines: ['never'] }, time + minute)
        this.say('add', {
          station: station.id, material: dose.material.id, exception, portion, caution: caution.id, lot: 'L 2207', mixSeconds: dose.mixSeconds, working: dose.working,
          planned: { amount: dose.amount, unit: dose.material.unit }, poured: { amount: dose.amount, unit: dose.material.unit, keyed: String(dose.amount) },
          predicted: { quantity: 'pH', from: value, to: dose.to },
        }, time + 3 * minute)
        // This bath answers a little less than the model says.
        this.model.move(check.id, (0.9 + 0.06 * this.random.normal()) * (dose.to - value))
        time += 4 * minute + dose.mixSeconds * 1000
      } else if (check.quantity === 'level' && value < check.limits.aim) {
        this.say('add', { station: station.id, material: 'water', exception, portion, poured: { amount: 12, unit: 'L', keyed: '12' }, mixSeconds: 600 }, time + minute)
        this.model.mend(check.id)
        time += 12 * minute
      } else {
        this.say('note', { text: `${check.name}: set right by hand`, about: 'maintenance', machine: machine.id, station: station.id, exception }, time + 2 * minute)
        this.model.mend(check.id)
        time += 8 * minute
      }
      value = this.model.again(check)
      this.#reading(check, value, time, { recheckOf: exception })
    }
  }

  checkOf(id: string): Check | undefined {
    return this.plan.checks.find((check) => check.id === (id as CheckId))
  }
  machineOf(id: string): Machine {
    return machineOf(this.plan, id as MachineId)
  }
}
export type { Teller }

/** A strip is read one pass later than it went in. */
const machineLag = (machine: Machine): number => {
  const metres = machine.stations.reduce((sum, { pathMetres }) => sum + (pathMetres ?? 0), 0)
  return Math.round((metres / machine.aimMetresPerMinute) * minute)
}
