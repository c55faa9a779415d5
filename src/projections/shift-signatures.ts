import type { PersonId } from '../plan/ids.ts'
import type { ShiftSpan } from '../plan/shift-time.ts'
import type { EntryId } from '../record/ids.ts'
import type { Ledger } from './ledger.ts'
import type { Line, LineOf } from './line.ts'
import { digestText, type CoveredEntry } from './shift-lines.ts'

export interface Signature {
  id: EntryId
  time: number
  person: PersonId | null
  data: LineOf<'signOff'>['data']
  /** Entries of the shift that came after it, and of those the ones that nobody has countersigned yet. */
  late: EntryId[]
  notCountersigned: EntryId[]
  countersigns: LineOf<'countersign'>[]
  /** The text of its digest, from the entries that it covers as they are here. Its hash differs from the signed digest while one is missing, or if one was changed. */
  digestText: string
}

/** The signatures under a shift, the oldest first. A later one covers what came late under an earlier one. */
export const signaturesOf = (ledger: Ledger, span: ShiftSpan, ofShift: readonly CoveredEntry[]): Signature[] => {
  const after = ledger.lines.slice(ledger.indexAt(span.from))
  const countersigns = after.filter((line) => line.kind === 'countersign')
  return after.flatMap((line: Line): Signature[] => {
    if (line.kind !== 'signOff' || line.data.shift !== span.shift.id || line.data.date !== span.date) return []
    const { covers } = line.data
    const isCovered = ({ dev, seq }: CoveredEntry): boolean => seq <= (covers[dev] ?? 0)
    const late = ofShift.filter((entry) => !isCovered(entry)).map(({ id }) => id)
    const own = countersigns.filter(({ data }) => data.ref === line.id)
    const seen = new Set(own.flatMap(({ data }) => data.late))
    return [
      {
        id: line.id, time: line.time, person: line.person, data: line.data, late, countersigns: own,
        notCountersigned: late.filter((id) => !seen.has(id)),
        digestText: digestText(ofShift.filter(isCovered)),
      },
    ]
  })
}
