import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, MaterialId, PersonId } from '../../src/plan/ids.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { judge } from '../../src/plan/limits.ts'
import { Lab } from '../../src/projections/lab.ts'
import type { LineOf } from '../../src/projections/line.ts'
import type { DeviceId, EntryId, Hash } from '../../src/record/ids.ts'
import type { DataOf, Kind } from '../../src/record/kinds.ts'
import { addOf } from '../../src/corrections/add-entry.ts'
import { answers } from '../../src/corrections/remedies.ts'
import type { Remedy } from '../../src/corrections/remedy.ts'
import type { Known } from '../../src/corrections/situation.ts'
import type { Reveal, Revealed } from '../../src/corrections/sealed-dose.ts'

const minute = 60_000
/** Monday 12 January 2026, 08:00 in the demo laboratory: two hours into the early shift. */
export const morning = Date.parse('2026-01-12T08:00:00Z')

/** A laboratory whose log is written by hand, minute by minute. */
export class Bench {
  readonly lab = new Lab()
  now = morning
  person: PersonId
  readonly plan: LabPlan
  #seq = 0

  constructor(change: (plan: LabPlan) => void = () => undefined) {
    this.plan = structuredClone(demoLab())
    change(this.plan)
    this.person = this.plan.people[0]!.id
    this.now -= 60 * minute
    this.enter('plan', { plan: this.plan, effectiveFrom: 0 })
    for (const { id } of this.plan.machines) this.enter('run', { machine: id, state: 'running', metresPerMinute: 30.48 })
    this.now += 60 * minute
  }

  get state() {
    return this.lab.state
  }

  wait(minutes: number): this {
    this.now += minutes * minute
    return this
  }

  enter<K extends Kind>(kind: K, data: DataOf<K>, person: PersonId | null = this.person): EntryId {
    this.#seq++
    const id = `00000000-0000-7000-8000-${this.#seq.toString(16).padStart(12, '0')}` as EntryId
    const at = new Date(this.now).toISOString()
    this.lab.add([
      {
        entry: {
          v: 1, id, dev: '00000000000000ab' as DeviceId, seq: this.#seq, prev: 'a'.repeat(64) as Hash, kind, at, tz: 'Europe/Lisbon', sess: '00000000',
          mono: this.now - morning + 10 * 24 * 3_600_000, skew: null, op: person, data: structuredClone(data) as Record<string, unknown>, blobs: [],
        },
        h: this.#seq.toString(16).padStart(64, '0') as Hash,
      },
    ])
    return id
  }

  read(check: string, value: number): EntryId {
    const found = this.plan.checks.find(({ id }) => id === check)
    if (found?.kind !== 'reading') throw new Error(`no reading ${check}`)
    const revision = this.state.plans.revisions.at(-1)!.id
    return this.enter('reading', { check: check as CheckId, plan: revision, value, keyed: String(value), unit: found.unit, how: 'keyed', verdict: judge(found.limits, value).verdict })
  }

  look(check: string, right: boolean): EntryId {
    return this.enter('look', { check: check as CheckId, plan: this.state.plans.revisions.at(-1)!.id, right })
  }

  strip(check: string, figures: Record<string, number>): EntryId {
    const found = this.plan.checks.find(({ id }) => id === check)
    if (found?.kind !== 'strip') throw new Error(`no strip ${check}`)
    const verdicts = found.figures.map(({ figure, limits }) => judge(limits, figures[figure]!).verdict)
    const verdict = verdicts.includes('ACT') ? 'ACT' : verdicts.includes('WARN') ? 'WARN' : 'IN'
    return this.enter('strip', { check: check as CheckId, plan: this.state.plans.revisions.at(-1)!.id, densities: {}, figures, verdict })
  }

  /** Everything that acid into a fixing bath of the negative machine asks for, read just now. */
  safe({ sulfite = 12, celsius = 21, exhaust = true, eyewash = true } = {}): this {
    this.read('neg-1-fix-sulfite', sulfite)
    this.read('neg-1-fix-temp', celsius)
    this.look('exhaust', exhaust)
    this.look('eyewash', eyewash)
    return this
  }

  /** A reading beyond its action limits and the repeat that confirms it, two minutes later. */
  confirmed(check: string, value: number): EntryId {
    const id = this.read(check, value)
    this.wait(2).read(check, value)
    return id
  }

  answers(exception: EntryId, known: Known = {}) {
    return answers(this.state, this.plan, exception, this.now, known)
  }
  remedies(exception: EntryId, known: Known = {}): readonly Remedy[] {
    return this.answers(exception, known)[0]?.remedies ?? []
  }
  remedy(exception: EntryId, id: string, known: Known = {}): Remedy {
    const found = this.remedies(exception, known).find((it) => it.id === id)
    if (!found) throw new Error(`no remedy ${id} among ${this.remedies(exception, known).map((it) => it.id).join(', ')}`)
    return found
  }

  get cautions(): LineOf<'caution'>[] {
    return this.lab.ledger.lines.filter((line): line is LineOf<'caution'> => line.kind === 'caution')
  }

  /** Holds every card that the remedy needs. */
  confirmCautions(remedy: Remedy): this {
    for (const { card, version, lines } of remedy.dose?.needsCaution ?? [])
      this.enter('caution', {
        card, version, lines: [...lines], station: remedy.station, material: remedy.dose!.material as MaterialId,
        ...(remedy.exception ? { exception: remedy.exception } : {}),
      })
    return this
  }

  reveal(remedy: Remedy, secondPerson?: PersonId): Reveal {
    return remedy.dose!.amount.reveal({ cautions: this.cautions, person: this.person, now: this.now, secondPerson })
  }

  opened(remedy: Remedy, secondPerson?: PersonId): Revealed {
    const revealed = this.confirmCautions(remedy).reveal(remedy, secondPerson)
    if (!revealed.ok) throw new Error('still sealed')
    return revealed
  }

  /** Confirms, pours what was planned and waits out the mixing. */
  pour(remedy: Remedy, { lot, mix = true }: { lot?: string; mix?: boolean } = {}): Revealed {
    const revealed = this.opened(remedy)
    const { amount, unit } = revealed
    const asked = { cautions: this.cautions, person: this.person, now: this.now, ...(remedy.dose!.secondPerson.required ? { secondPerson: this.plan.people[1]!.id } : {}) }
    const made = addOf(remedy, { ...asked, poured: { amount, unit, keyed: String(amount).slice(0, 24) }, lot })
    if (!made.ok) throw new Error(`no entry: ${made.problems.map(({ code }) => code).join(', ')}`)
    this.enter('add', made.data)
    if (mix) this.wait(remedy.wait!.seconds / 60 + 1)
    return revealed
  }
}
