import type { Check, StripCheck } from '../plan/check.ts'
import type { CheckId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { figureLimits } from '../plan/judge-strip.ts'
import { judge, type Verdict } from '../plan/limits.ts'
import { shiftAt } from '../plan/shift-time.ts'
import type { EntryId } from '../record/ids.ts'
import { tidy } from '../science/decimal.ts'
import { csvText } from './csv.ts'
import type { Ledger } from './ledger.ts'

export interface SeriesPoint {
  id: EntryId
  time: number
  value: number
  keyed: string
  verdict: Verdict
  /** Batch of a strip, and the figure as it was found; the point is its distance from the aim. */
  batch?: string | undefined
  found?: number
}

/** The readings of one check, oldest first, withdrawn ones left out. */
export const seriesOf = (ledger: Ledger, check: CheckId): SeriesPoint[] => {
  const points: SeriesPoint[] = []
  for (const line of ledger.lines)
    if (line.kind === 'reading' && line.data.check === check && !line.withdrawnBy)
      points.push({ id: line.id, time: line.time, value: line.data.value, keyed: line.data.keyed, verdict: line.data.verdict })
  return points
}

/**
 * One figure of a strip check as its distance from the aim, oldest first: each batch of strips has aims of its own, and a chart of the figure itself
 * would jump with every box.
 */
export const figureSeriesOf = (ledger: Ledger, check: StripCheck, name: string): SeriesPoint[] => {
  const figure = check.figures.find((it) => it.figure === name)
  if (!figure) return []
  const points: SeriesPoint[] = []
  for (const line of ledger.lines) {
    if (line.kind !== 'strip' || line.data.check !== check.id || line.withdrawnBy) continue
    const found = line.data.figures[name]
    if (found === undefined) continue
    const limits = figureLimits(figure, line.data.aims)
    const value = tidy(found - limits.aim)
    points.push({ id: line.id, time: line.time, value, keyed: offText(value, decimalsOf(figure.step)), verdict: judge(limits, found).verdict, batch: line.data.batch, found })
  }
  return points
}

const decimalsOf = (step: number): number => String(step).split('.')[1]?.length ?? 0
const offText = (value: number, decimals: number): string => `${Number(value.toFixed(decimals)) > 0 ? '+' : ''}${value.toFixed(decimals)}`

const minute = 60_000
/** So many intervals without a reading are a gap: one was missed. Common practice, no source. */
const missedIntervals = 2
/** Of a check that is due once a shift. */
const missedShiftMinutes = 26 * 60

/** Points before which a reading was missed, or another batch of strips began: no range, trend or run reaches across. */
export const gapsOf = (points: readonly SeriesPoint[], { schedule }: Pick<Check, 'schedule'>): number[] => {
  const longest = (schedule.kind === 'interval' ? missedIntervals * schedule.minutes : missedShiftMinutes) * minute
  return points.flatMap((point, index) => {
    const before = points[index - 1]
    return before && (point.time - before.time > longest || point.batch !== before.batch) ? [index] : []
  })
}

export type SeriesEvent = { time: number; id?: EntryId } & (
  | { kind: 'add'; material: string; text: string }
  | { kind: 'bathReplaced' }
  | { kind: 'runOff'; litres: number }
  | { kind: 'stripBatch'; batch: string }
  | { kind: 'plan' }
  | { kind: 'shift'; name: string }
)

/** What happened to a bath: marks on its charts, in order. Borders of shifts come from `shiftBorders`. */
export const eventsOf = (ledger: Ledger, plan: LabPlan, about: { station: StationId; check: CheckId }): SeriesEvent[] => {
  const events: SeriesEvent[] = []
  for (const line of ledger.lines) {
    if (line.withdrawnBy) continue
    const { id, time } = line
    if (line.kind === 'add' && line.data.station === about.station) events.push({ kind: 'add', id, time, material: line.data.material, text: `${line.data.poured.keyed} ${line.data.poured.unit}` })
    if (line.kind === 'close' && line.data.reason === 'bathReplaced' && stationOfException(ledger, plan, line.data.exception) === about.station) events.push({ kind: 'bathReplaced', id, time })
    if (line.kind === 'mixEnd' && line.data.how === 'connected' && line.data.newBath === about.station) events.push({ kind: 'bathReplaced', id, time })
    if (line.kind === 'runOff' && line.data.station === about.station) events.push({ kind: 'runOff', id, time, litres: line.data.litres })
    if (line.kind === 'stripBatch' && line.data.check === about.check) events.push({ kind: 'stripBatch', id, time, batch: line.data.batch })
    if (line.kind === 'plan') events.push({ kind: 'plan', id, time })
  }
  return events
}

const day = 86_400_000
/** Borders of shifts are marks only while they can be told apart. */
const mostShiftDays = 7

export const shiftBorders = (plan: LabPlan, span: { from: number; to: number }): SeriesEvent[] => {
  if (span.to - span.from > mostShiftDays * day) return []
  const borders: SeriesEvent[] = []
  for (let shift = shiftAt(plan, Math.floor(span.from)); shift.to <= span.to; shift = shiftAt(plan, shift.to)) borders.push({ kind: 'shift', time: shift.to, name: shiftAt(plan, shift.to).shift.name })
  return borders
}

const stationOfException = (ledger: Ledger, plan: LabPlan, exception: EntryId): StationId | undefined => {
  const opened = ledger.line(exception)
  const check = opened && 'check' in opened.data ? opened.data.check : undefined
  return plan.checks.find(({ id }) => id === check)?.station
}

/** A table for other programs (RFC 4180), times in ISO 8601. */
export const seriesCsv = (points: readonly SeriesPoint[], unit: string): string =>
  csvText([['time', 'value', 'unit', 'verdict', 'found', 'batch', 'entry'], ...points.map(({ id, time, keyed, verdict, batch, found }) => [new Date(time).toISOString(), keyed, unit, verdict, found, batch, id])])
