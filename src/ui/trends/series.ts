import type { CheckId } from '../../plan/ids.ts'
import type { Verdict } from '../../plan/limits.ts'
import type { Ledger } from '../../projections/ledger.ts'
import type { EntryId } from '../../record/ids.ts'
import type { StationId } from '../../plan/ids.ts'

export interface Point {
  id: EntryId
  time: number
  value: number
  keyed: string
  verdict: Verdict
}

/** The readings of one check, oldest first, withdrawn ones left out. */
export const pointsOf = (ledger: Ledger, check: CheckId): Point[] =>
  ledger.lines.flatMap((line) =>
    line.kind === 'reading' && !line.withdrawnBy && line.data.check === check
      ? [{ id: line.id, time: line.time, value: line.data.value, keyed: line.data.keyed, verdict: line.data.verdict }]
      : [],
  )

/** When something was added to the bath of a station: event marks on its charts. */
export const addTimes = (ledger: Ledger, station: StationId): number[] =>
  ledger.lines.flatMap((line) => (line.kind === 'add' && !line.withdrawnBy && line.data.station === station ? [line.time] : []))

/** RFC 4180: CR LF, quotes doubled; ISO 8601 times. */
export const csvOf = (points: readonly Point[], unit: string): string => {
  const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)
  const rows = points.map(({ id, time, keyed, verdict }) => [new Date(time).toISOString(), keyed, unit, verdict, id])
  return [['time', 'value', 'unit', 'verdict', 'entry'], ...rows].map((row) => `${row.map(quoted).join(',')}\r\n`).join('')
}
