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
  /** Exceptions of the signer that it released because nobody else was there, and of those the ones that no other supervisor has countersigned. */
  own: EntryId[]
  ownNotCountersigned: EntryId[]
  countersigns: LineOf<'countersign'>[]
  /** The text of its digest, from the entries that it covers as they are here. Its hash differs from the signed digest while one is missing, or if one was changed. */
  digestText: string
}

/** As a signature's open items name an exception that its signer opened, answered or closed. */
export const ownExceptionCode = 'ownException'

/** The signatures under a shift, the oldest first. One that was provisional is given again over the same digest, with the server's word. */
export const signaturesOf = (ledger: Ledger, span: Pick<ShiftSpan, 'shift' | 'date' | 'from'>, ofShift: readonly CoveredEntry[]): Signature[] => {
  const after = ledger.lines.slice(ledger.indexAt(span.from))
  const countersigns = after.filter((line) => line.kind === 'countersign')
  const signOffs = after.filter((line: Line): line is LineOf<'signOff'> => line.kind === 'signOff' && line.data.shift === span.shift.id && line.data.date === span.date)
  return signOffs.map(({ id, time, person, data }): Signature => {
    const isCovered = ({ dev, seq }: CoveredEntry): boolean => seq <= (data.covers[dev] ?? 0)
    const late = ofShift.filter((entry) => !isCovered(entry)).map((entry) => entry.id)
    const sameDigest = new Set(signOffs.flatMap((it) => (it.data.digest === data.digest ? [it.id] : [])))
    const given = countersigns.filter((it) => sameDigest.has(it.data.ref))
    const seenBy = (who: (signer: PersonId | null) => boolean): Set<EntryId> => new Set(given.flatMap((it) => (who(it.person) ? it.data.late : [])))
    const [seen, seenByAnother] = [seenBy(() => true), seenBy((signer) => signer !== person)]
    const own = data.openItems.flatMap(({ code, ref }) => (code === ownExceptionCode && ref ? [ref as EntryId] : []))
    return {
      id, time, person, data, late, own, countersigns: given,
      notCountersigned: late.filter((entry) => !seen.has(entry)),
      ownNotCountersigned: own.filter((entry) => !seenByAnother.has(entry)),
      digestText: digestText(ofShift.filter(isCovered)),
    }
  })
}

/** The signature that stands, and whether the server has ever given its word for it. */
export const standingSignature = (signatures: readonly Signature[]): { signature: Signature; isProvisional: boolean } | undefined => {
  const signature = signatures[0]
  return signature && { signature, isProvisional: signatures.every(({ data }) => data.provisional || data.digest !== signature.data.digest) }
}
