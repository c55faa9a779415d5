import type { ShiftFile } from '../../wire/shift-file.ts'

type Entry = ShiftFile['entries'][number]['entry']

const field = (data: unknown, name: string): unknown => (typeof data === 'object' && data !== null ? (data as Record<string, unknown>)[name] : undefined)

/** When an entry was keyed, by the phone's clock and the error then known of it; and the minute for which it speaks, where it says one that is not later. */
const spokenAt = ({ at, skew, data }: Entry): number => {
  const error = field(skew, 'ms')
  const keyedAt = Date.parse(String(at)) + (typeof error === 'number' ? error : 0)
  const noted = field(data, 'notedAt')
  const notedAt = typeof noted === 'string' ? Date.parse(noted) : Number.NaN
  return notedAt <= keyedAt ? notedAt : keyedAt
}

/**
 * Which entries belong to the shift, by the rule that the record gives, worked out anew: what speaks for an instant of it, a reason given later for
 * a gap in it, its hand-over, a change to one of these, a cause given for one, and who took note of one. Signatures are about a shift and never of it.
 */
export const entriesOfShift = ({ shift, entries }: ShiftFile): Set<string> => {
  const within = (time: unknown): boolean => typeof time === 'number' && time >= shift.from && time < shift.to
  const byId = new Map(entries.flatMap(({ entry, uncounted }) => (uncounted ? [] : [[entry.id as string, entry] as const])))
  const isOf = (entry: Entry | undefined, seen: readonly string[]): boolean => {
    if (!entry || seen.includes(entry.id)) return false
    switch (entry.kind) {
      case 'signOff':
      case 'countersign':
        return false
      case 'handover':
        return field(entry.data, 'shift') === shift.id && field(entry.data, 'date') === shift.date
      case 'skip':
        return within(spokenAt(entry)) || within(field(entry.data, 'due'))
      case 'amend':
      case 'withdraw':
        return within(spokenAt(entry)) || isOf(byId.get(String(field(entry.data, 'ref'))), [...seen, entry.id])
      case 'acknowledge':
        return within(spokenAt(entry)) || isOf(byId.get(String(field(entry.data, 'of'))), [...seen, entry.id])
      case 'note':
        return within(spokenAt(entry)) || (field(entry.data, 'about') === 'cause' && isOf(byId.get(String(field(entry.data, 'exception'))), [...seen, entry.id]))
      default:
        return within(spokenAt(entry))
    }
  }
  return new Set([...byId].filter(([, entry]) => isOf(entry, [])).map(([id]) => id))
}
