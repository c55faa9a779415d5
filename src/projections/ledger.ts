import { understand, type Entry } from '../record/entry.ts'
import type { EntryId } from '../record/ids.ts'
import { kinds, type Kind } from '../record/kinds.ts'
import { byTime, enteredAtOf, lineOf, spokenAtOf, type Arrived, type Line, type LineKey, type LineOf } from './line.ts'
import { insertSorted, lowerBound } from './sorted.ts'

interface Known {
  line: Line
  original: Entry
  /** New in this call and not yet in the log: it is put in once, where it belongs, when all is worked out. */
  isFresh: boolean
}
type Change = LineOf<'amend'> | LineOf<'withdraw'>

const isChange = (line: Line): line is Change => line.kind === 'amend' || line.kind === 'withdraw'

/** A signature stands as it was given, and a plan is revised by a new one: nothing changes these afterwards. */
const unchangeable: ReadonlySet<Kind> = new Set<Kind>(['signOff', 'countersign', 'plan'])

/**
 * The laboratory's log in order of time, whatever the order in which entries arrived. Amendments and withdrawals act on the line
 * that they name, which may be a change itself: a withdrawn amendment no longer counts. Lines withdrawn stay, marked.
 */
export class Ledger {
  #lines: Line[] = []
  #byId = new Map<EntryId, Known>()
  /** Changes by the line they name, which may itself not have arrived yet. */
  #changes = new Map<EntryId, EntryId[]>()
  #plans = new Map<EntryId, LineOf<'plan'>>()

  get lines(): readonly Line[] {
    return this.#lines
  }

  /** The plans of the log, in order of time. */
  get plans(): LineOf<'plan'>[] {
    return [...this.#plans.values()].sort(byTime)
  }

  line(id: EntryId): Line | undefined {
    return this.#byId.get(id)?.line
  }

  /** The data of an entry as first recorded, before any amendment. */
  original(id: EntryId): Entry | undefined {
    return this.#byId.get(id)?.original
  }

  /** Index of the first line at or after an instant. */
  indexAt(time: number): number {
    return lowerBound(this.#lines, time, (line, at) => line.time - at)
  }

  /** Index at which a line with this key stands or would stand. */
  indexOf(key: LineKey): number {
    return lowerBound(this.#lines, key, byTime)
  }

  /** Takes entries in, in any order and any number of times. Gives the first index from which the log is different, or undefined. */
  add(arrived: readonly Arrived[]): number | undefined {
    let earliest: LineKey | undefined
    const touch = (key: LineKey): void => {
      if (!earliest || byTime(key, earliest) < 0) earliest = { time: key.time, dev: key.dev, seq: key.seq, id: key.id }
    }
    const fresh: Known[] = []
    /** Lines to be worked out anew: new ones that were changed before they came, and those that changes name. */
    const stale = new Set<EntryId>()
    for (const item of arrived) {
      const known = this.#byId.get(item.entry.id)
      const counts = item.status === undefined || item.status === 'valid'
      if (known) {
        if (!counts) this.#drop(known, touch, stale)
        else if (item.recvAt !== undefined && item.recvAt < (known.line.recvAt ?? Number.POSITIVE_INFINITY)) {
          known.line.recvAt = item.recvAt
          if (enteredAtOf(known.original, item.recvAt) !== known.line.enteredAt) stale.add(known.line.id)
        }
        continue
      }
      if (!counts) continue
      const understood = understand(item.entry)
      if (understood.status !== 'valid') continue
      const made: Known = { line: lineOf(understood.entry, item.h, item.recvAt), original: understood.entry, isFresh: true }
      this.#byId.set(made.line.id, made)
      fresh.push(made)
      if (made.line.kind === 'plan') this.#plans.set(made.line.id, made.line)
      if (this.#changes.has(made.line.id)) stale.add(made.line.id)
      if (isChange(made.line)) {
        const { ref } = made.line.data
        const changes = this.#changes.get(ref)
        if (changes) changes.push(made.line.id)
        else this.#changes.set(ref, [made.line.id])
        stale.add(ref)
      }
    }
    for (const id of stale) this.#workOut(id, touch)
    const lines: Line[] = []
    for (const known of fresh) {
      if (!known.isFresh) continue
      known.isFresh = false
      touch(known.line)
      lines.push(known.line)
    }
    insertSorted(this.#lines, lines, byTime)
    return earliest && this.indexOf(earliest)
  }

  /** A line anew from its entry and the changes that stand; then, where it is itself a change, the line that it names. */
  #workOut(first: EntryId, touch: (key: LineKey) => void): void {
    const seen = new Set<EntryId>()
    let id: EntryId | undefined = first
    while (id && !seen.has(id)) {
      seen.add(id)
      const known = this.#byId.get(id)
      if (!known) return
      const made = this.#changed(known)
      if (!known.isFresh) this.#move(known.line, made, touch)
      known.line = made
      if (made.kind === 'plan') this.#plans.set(id, made)
      id = isChange(made) ? made.data.ref : undefined
    }
  }

  #changed({ line, original }: Known): Line {
    const made = lineOf(original, line.h, line.recvAt)
    if (unchangeable.has(made.kind)) return made
    for (const change of this.#changesOf(line.id)) {
      if (this.#isWithdrawn(change.id, new Set([line.id]))) continue
      if (change.kind === 'withdraw') {
        made.withdrawnBy = change.id
        continue
      }
      const data = kinds[made.kind].safeParse(change.data.data)
      // A change goes on changing the line that it named at first.
      if (!data.success || (isChange(made) && made.data.ref !== (data.data as { ref?: EntryId }).ref)) continue
      made.data = data.data as never
      made.amendedBy.push(change.id)
    }
    made.time = spokenAtOf(made.data, made.enteredAt)
    return made
  }

  #changesOf(id: EntryId): Change[] {
    return (this.#changes.get(id) ?? []).map((change) => this.#byId.get(change)!.line as Change).sort(byTime)
  }

  /** Two withdrawals that name each other cannot both hold: on the way round, the one asked about first counts as standing. */
  #isWithdrawn(id: EntryId, asking: ReadonlySet<EntryId>): boolean {
    if (asking.has(id)) return false
    return this.#changesOf(id).some((change) => change.kind === 'withdraw' && !this.#isWithdrawn(change.id, new Set([...asking, id])))
  }

  #move(from: Line, to: Line, touch: (key: LineKey) => void): void {
    touch(from)
    touch(to)
    const at = this.indexOf(from)
    if (byTime(from, to) === 0) this.#lines[at] = to
    else {
      this.#lines.splice(at, 1)
      insertSorted(this.#lines, [to], byTime)
    }
  }

  /** The server will not count it after all: its device was shut out, or the entry does not fit. */
  #drop(known: Known, touch: (key: LineKey) => void, stale: Set<EntryId>): void {
    const { line } = known
    if (known.isFresh) known.isFresh = false
    else {
      touch(line)
      this.#lines.splice(this.indexOf(line), 1)
    }
    this.#byId.delete(line.id)
    this.#plans.delete(line.id)
    stale.delete(line.id)
    if (!isChange(line)) return
    const left = this.#changes.get(line.data.ref)!.filter((id) => id !== line.id)
    if (left.length) this.#changes.set(line.data.ref, left)
    else this.#changes.delete(line.data.ref)
    stale.add(line.data.ref)
  }
}
