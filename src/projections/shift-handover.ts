import type { ShiftSpan } from '../plan/shift-time.ts'
import type { Ledger } from './ledger.ts'
import { byTime, type Line, type LineOf } from './line.ts'

export interface ShiftHandover {
  given?: LineOf<'handover'>
  accepted?: LineOf<'handover'>
}

/** Accepted by another person, and after what was given last: whoever adds to a hand-over asks for a new acceptance. */
export const handoverIn = (lines: readonly Line[]): ShiftHandover => {
  const handovers = lines.filter((line) => line.kind === 'handover')
  const given = handovers.findLast(({ data }) => data.side === 'given')
  const accepted = given && handovers.findLast((it) => it.data.side === 'accepted' && it.person !== given.person && byTime(it, given) > 0)
  return { ...(given ? { given } : {}), ...(accepted ? { accepted } : {}) }
}

/** What another shift handed over: for the one that takes over from it. */
export const handoverOf = (ledger: Ledger, { shift, date }: Pick<ShiftSpan, 'shift' | 'date'>): ShiftHandover =>
  handoverIn(ledger.lines.filter((line) => line.kind === 'handover' && !line.withdrawnBy && line.data.shift === shift.id && line.data.date === date))
