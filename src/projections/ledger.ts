import type { PersonId } from '../plan/ids.ts'
import { understand, type Entry } from '../record/entry.ts'
import type { EntryId } from '../record/ids.ts'
import { kinds, type Kind } from '../record/kinds.ts'
import { byTime, type Arrived, type Line } from './line.ts'

/**
 * The laboratory's log in order of time, whatever the order in which entries arrived. Amendments and withdrawals act on the line
 * that they name; lines withdrawn stay, marked.
 */
export class Ledger {
  #lines: Line[] = []
  #byId = new Map<EntryId, { line: Line; original: Entry }>()
  /** Changes by the line they name, which may itself not have arrived yet. */
  #changes = new Map<EntryId, Line[]>()

  get lines(): readonly Line[] {
    return this.#lines
  }

  line(id: EntryId): Line | undefined {
    return this.#byId.get(id)?.line
  }

  /** The data of an entry as first recorded, before any amendment. */
  original(id: EntryId): Entry | undefined {
    return this.#byId.get(id)?.original
  }

  /** Takes entries in, in any order and any number of times. Gives the first index from which the log is different, or undefined. */
  add(arrived: readonly Arrived[]): number | undefined {
    const before = this.#lines.at(-1)
    let earliest: Line | undefined
    const touch = (line: Line): void => {
      if (!earliest || byTime(line, earliest) < 0) earliest = line
    }
    let added = false
    for (const item of arrived) {
      const known = this.#byId.get(item.entry.id)
      if (known) {
        // An own entry that comes back with the server's receipt.
        if (item.recvAt !== undefined) known.line.recvAt = item.recvAt
        continue
      }
      if (item.status === 'invalid' || item.status === 'opaque') continue
      const understood = understand(item.entry)
      if (understood.status !== 'valid') continue
      const line = lineOf(understood.entry, item)
      this.#byId.set(line.id, { line, original: understood.entry })
      this.#lines.push(line)
      added = true
      touch(line)
      const named = line.kind === 'amend' || line.kind === 'withdraw' ? line.data.ref : undefined
      if (named) {
        const changes = this.#changes.get(named) ?? []
        changes.push(line)
        changes.sort(byTime)
        this.#changes.set(named, changes)
        this.#applyChanges(named, touch)
      }
      if (this.#changes.has(line.id)) this.#applyChanges(line.id, touch)
    }
    if (!added) return undefined
    const inOrder = !before || !earliest || byTime(before, earliest) < 0
    if (!inOrder || arrived.length > 1) this.#lines.sort(byTime)
    return this.#lines.indexOf(earliest!)
  }

  #applyChanges(id: EntryId, touch: (line: Line) => void): void {
    const known = this.#byId.get(id)
    if (!known) return
    touch(known.line)
    const fresh = lineOf(known.original, { entry: known.original as Arrived['entry'], h: known.line.h, recvAt: known.line.recvAt })
    for (const change of this.#changes.get(id) ?? []) {
      if (change.kind === 'withdraw') fresh.withdrawnBy = change.id
      if (change.kind === 'amend') {
        const data = kinds[fresh.kind as Kind].safeParse(change.data.data)
        if (!data.success) continue
        fresh.data = data.data as never
        fresh.amendedBy.push(change.id)
      }
    }
    fresh.time = timeOf(fresh.data, fresh.enteredAt)
    Object.assign(known.line, fresh)
    if (!fresh.withdrawnBy) delete known.line.withdrawnBy
    touch(known.line)
    this.#lines.sort(byTime)
  }
}

const lineOf = (entry: Entry, item: Arrived): Line => {
  const enteredAt = Date.parse(entry.at) + (entry.skew?.ms ?? 0)
  return {
    id: entry.id,
    dev: entry.dev,
    seq: entry.seq,
    h: item.h,
    person: entry.op as PersonId | null,
    time: timeOf(entry.data, enteredAt),
    enteredAt,
    recvAt: item.recvAt,
    amendedBy: [],
    kind: entry.kind,
    data: entry.data,
  } as Line
}

/** A reading keyed later speaks for the minute in which it was noted, but never for the future. */
const timeOf = (data: object, enteredAt: number): number => {
  const notedAt = 'notedAt' in data && typeof data.notedAt === 'string' ? Date.parse(data.notedAt) : Number.NaN
  return Number.isFinite(notedAt) && notedAt <= enteredAt ? notedAt : enteredAt
}
