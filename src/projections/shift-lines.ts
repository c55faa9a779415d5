import type { ShiftSpan } from '../plan/shift-time.ts'
import type { Entry } from '../record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../record/ids.ts'
import type { Ledger } from './ledger.ts'
import { enteredAtOf, spokenAtOf, type Line } from './line.ts'

/**
 * Whether an entry is of a shift, decided by the entry alone as it was first recorded, so that anybody can work it out again from an export: it
 * speaks for an instant of the shift, or, entered later, explains a gap of it, hands it over, or changes such an entry, names its cause, or takes
 * note of it.
 */
export const isOfShift = (ledger: Ledger, span: ShiftSpan, id: EntryId, seen: ReadonlySet<EntryId> = new Set()): boolean => {
  const entry = ledger.original(id)
  if (!entry || seen.has(id)) return false
  if (entry.kind === 'signOff' || entry.kind === 'countersign') return false
  if (entry.kind === 'handover') return entry.data.shift === span.shift.id && entry.data.date === span.date
  const time = spokenAtOf(entry.data, enteredAtOf(entry))
  if (time >= span.from && time < span.to) return true
  if (entry.kind === 'skip') return entry.data.due >= span.from && entry.data.due < span.to
  const about = aboutOf(entry)
  return about !== undefined && isOfShift(ledger, span, about, new Set([...seen, id]))
}

/** The entry that another one is about and whose shift it shares. */
const aboutOf = ({ kind, data }: Entry): EntryId | undefined => {
  switch (kind) {
    case 'amend':
    case 'withdraw':
      return data.ref
    case 'acknowledge':
      return data.of
    case 'note':
      return data.about === 'cause' ? data.exception : undefined
    default:
      return undefined
  }
}

/** The lines of a shift, in order of time. Entered as long after it as people explain gaps: until its signature, or for good. */
export const linesOfShift = (ledger: Ledger, span: ShiftSpan): Line[] => {
  // A clock that was wrong by hours puts an entry elsewhere in the log than its own time says.
  const from = ledger.indexAt(span.from - clockMargin)
  return ledger.lines.slice(from).filter(({ id }) => isOfShift(ledger, span, id))
}

const clockMargin = 24 * 3_600_000

export interface CoveredEntry {
  dev: DeviceId
  seq: number
  id: EntryId
  h: Hash
}

/**
 * The highest number of each device that the signer knew. A device's entries come without gaps, so these numbers say exactly what was known:
 * entries of the shift beyond them came after the signature.
 */
export const coversOf = (known: readonly { dev: DeviceId; seq: number }[]): Record<DeviceId, number> => {
  const covers: Record<DeviceId, number> = {}
  for (const { dev, seq } of known) covers[dev] = Math.max(covers[dev] ?? 0, seq)
  return covers
}

/** What a signature covers, in the order in which its digest takes it: by device and number, the same wherever and whenever it is worked out. */
export const signedLines = <E extends CoveredEntry>(entries: readonly E[]): E[] =>
  [...entries].sort((a, b) => (a.dev < b.dev ? -1 : a.dev > b.dev ? 1 : a.seq - b.seq || (a.id < b.id ? -1 : 1)))

/**
 * The text whose SHA-256 is the digest under a signature: one line an entry.
 *
 * @example digestText([{ dev, seq: 1, id, h }]) // 'bathkeeper-digest-1\n<id> <h>\n'
 */
export const digestText = (entries: readonly CoveredEntry[]): string =>
  `bathkeeper-digest-1\n${signedLines(entries).map(({ id, h }) => `${id} ${h}\n`).join('')}`
