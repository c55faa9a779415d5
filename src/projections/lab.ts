import type { EntryId } from '../record/ids.ts'
import { Checkpoints } from './checkpoints.ts'
import { coveredBy, isCovered, type Covered } from './covered.ts'
import { emptyFold, foldVersion, stepFold, type Folded, type LabState } from './lab-state.ts'
import { Ledger } from './ledger.ts'
import { byTime, keyOf, type Arrived, type Line, type LineKey } from './line.ts'
import { namesOf, speaksOf, type Names } from './names.ts'
import { planAt, planOfLine, plansOf, type PlanInForce, type Plans } from './plans.ts'
import type { Snapshot } from './snapshot.ts'

export type { LabState } from './lab-state.ts'

/** What became of entries that were handed in. */
export interface Added {
  /** Index of the first line from which the log is different; undefined where nothing changed. */
  from: number | undefined
  /**
   * Entries that belong before the snapshot from which this lab was restored, or that change what lies before it. They are not counted
   * here: fold anew, from an earlier snapshot or from the whole log.
   */
  older: EntryId[]
  /**
   * Entries that are named by a change and are not here. Where the store has one, it lies before the snapshot: fold anew. Where it has
   * not, it has not arrived yet, and all is well.
   */
  unknown: EntryId[]
}

/** The log and its fold, kept up to date entry by entry; what comes late folds anew from the checkpoint before it. */
export class Lab {
  readonly ledger = new Ledger()
  /** Lines that were folded into the snapshot and are not in memory. */
  readonly linesBefore: number = 0
  #plansBefore: PlanInForce[] = []
  #last: LineKey | undefined
  #covers: Covered = {}
  #awaited: readonly EntryId[] = []
  #plans: Plans = { revisions: [] }
  #names = new Map<EntryId, Names>()
  #folded: Folded
  #lines = 0
  #checkpoints: Checkpoints
  #state: LabState

  constructor(restored?: Snapshot) {
    const first = restored?.state ?? JSON.stringify(emptyFold())
    if (restored) {
      this.linesBefore = restored.lines
      this.#last = restored.last
      this.#covers = restored.covers
      this.#awaited = restored.awaited
      this.#plansBefore = restored.plans
    }
    this.#folded = JSON.parse(first) as Folded
    this.#checkpoints = new Checkpoints(first)
    this.#takePlans()
    this.#state = stateOf(this.#plans, this.#folded)
  }

  /** From a snapshot that `parseSnapshot` has read; then `add` what the store has since. */
  static restore(restored: Snapshot): Lab {
    return new Lab(restored)
  }

  /** Changed in place by `add`; a state of its own for an earlier instant comes from `stateAt`. */
  get state(): LabState {
    return this.#state
  }

  plan(now: number): PlanInForce | undefined {
    return planAt(this.#plans, now)
  }

  add(arrived: readonly Arrived[]): Added {
    const { taken, older } = this.#sorted(arrived)
    let from = this.ledger.add(taken)
    const unknown = this.#last ? this.#unknownRefs(taken) : []
    if (from === undefined) return { from, older, unknown }
    const late = this.#last && this.ledger.lines[0] && byTime(this.ledger.lines[0], this.#last) <= 0 ? this.ledger.lines[0].id : undefined
    if (late) older.push(late)
    const changed = this.#takePlans()
    if (changed) {
      from = Math.min(from, this.#firstUnder(changed))
      if (this.#last && changed.from <= this.#last.time) older.push(changed.id)
    }
    if (from < this.#lines) this.#goBack(from)
    this.#foldOn()
    return { from, older, unknown }
  }

  /** The lab as the lines before an instant tell it. A state of its own. */
  stateAt(time: number): LabState {
    return stateOf(this.#plans, this.#foldTo(this.ledger.indexAt(time)))
  }

  /** A fold of all lines before an instant, to be put away; undefined where there are none in memory. */
  snapshot(before: number): Snapshot | undefined {
    const count = this.ledger.indexAt(before)
    const last = this.ledger.lines[count - 1]
    if (!last) return undefined
    const covered = this.ledger.lines.slice(0, count)
    return {
      v: foldVersion,
      lines: this.linesBefore + count,
      last: { time: last.time, dev: last.dev, seq: last.seq, id: last.id },
      covers: coveredBy(covered, this.#covers),
      awaited: this.#awaitedBy(covered),
      plans: this.#plans.revisions,
      state: JSON.stringify(this.#foldTo(count)),
    }
  }

  /** How many checkpoints there are: for the measuring bench. */
  get checkpointCount(): number {
    return this.#checkpoints.count
  }

  #sorted(arrived: readonly Arrived[]): { taken: readonly Arrived[]; older: EntryId[] } {
    const last = this.#last
    if (!last) return { taken: arrived, older: [] }
    const taken: Arrived[] = []
    const older: EntryId[] = []
    for (const item of arrived) {
      if (isCovered(this.#covers, item.entry)) continue
      if (byTime(keyOf(item.entry, item.recvAt), last) <= 0 || this.#awaited.includes(item.entry.id)) older.push(item.entry.id)
      else taken.push(item)
    }
    return { taken, older }
  }

  #awaitedBy(covered: readonly Line[]): EntryId[] {
    const here = new Set(covered.map(({ id }) => id))
    const refs = covered.flatMap((line) => (line.kind === 'amend' || line.kind === 'withdraw' ? [line.data.ref] : []))
    return [...new Set([...this.#awaited, ...refs])].filter((ref) => !here.has(ref))
  }

  #unknownRefs(taken: readonly Arrived[]): EntryId[] {
    return taken.flatMap(({ entry }) => {
      const line = this.ledger.line(entry.id)
      return (line?.kind === 'amend' || line?.kind === 'withdraw') && !this.ledger.line(line.data.ref) ? [line.data.ref] : []
    })
  }

  /** Takes the plans of the log in. Gives the first revision that is new or no longer there. */
  #takePlans(): PlanInForce | undefined {
    const own = plansOf(this.ledger.plans)
    const revisions = [...this.#plansBefore.filter(({ id }) => !own.some((it) => it.id === id)), ...own].sort((a, b) => a.from - b.from)
    const old = this.#plans.revisions
    const index = revisions.findIndex(({ id }, at) => old[at]?.id !== id)
    if (index < 0 && revisions.length === old.length) return undefined
    const first = [revisions[index], old[index < 0 ? revisions.length : index]].filter((it) => it !== undefined).sort((a, b) => a.from - b.from)[0]
    this.#plans.revisions.splice(0, old.length, ...revisions)
    for (const { id, plan } of revisions) if (!this.#names.has(id)) this.#names.set(id, namesOf(plan))
    return first
  }

  /** The first line that another set of revisions could judge otherwise: under the first plan, all of them. */
  #firstUnder(changed: PlanInForce): number {
    if (this.#plans.revisions[0]?.id === changed.id || !this.#plans.revisions.length) return 0
    const inForce = this.ledger.indexAt(changed.from)
    const names = this.ledger.lines.findIndex((line) => (line.data as { plan?: unknown }).plan === changed.id)
    return names < 0 ? inForce : Math.min(inForce, names)
  }

  #goBack(from: number): void {
    this.#checkpoints.forgetAfter(from)
    const checkpoint = this.#checkpoints.before(from)
    this.#folded = JSON.parse(checkpoint.state) as Folded
    this.#lines = checkpoint.lines
  }

  #foldOn(): void {
    const { lines } = this.ledger
    while (this.#lines < lines.length) {
      this.#step(this.#folded, lines[this.#lines]!)
      this.#lines++
      if (this.#checkpoints.isWanted(this.#lines, lines.length)) this.#checkpoints.keep(this.#lines, JSON.stringify(this.#folded))
    }
    Object.assign(this.#state, this.#folded)
  }

  #foldTo(count: number): Folded {
    const checkpoint = this.#checkpoints.before(count)
    const folded = JSON.parse(checkpoint.state) as Folded
    for (let index = checkpoint.lines; index < count; index++) this.#step(folded, this.ledger.lines[index]!)
    return folded
  }

  #step(folded: Folded, line: Line): void {
    if (line.withdrawnBy) return
    // Before there is any plan there is nothing that an entry could speak of.
    const judgedBy = planOfLine(this.#plans, line)
    if (judgedBy && speaksOf(this.#names.get(judgedBy.id)!, line)) stepFold(folded, line, judgedBy.plan)
  }
}

const stateOf = (plans: Plans, folded: Folded): LabState => ({ plans, ...folded })
