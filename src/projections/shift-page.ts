import type { MachineId, PersonId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { ShiftSpan } from '../plan/shift-time.ts'
import type { EntryId } from '../record/ids.ts'
import { coverage, type Coverage } from './coverage.ts'
import type { Exception } from './exceptions.ts'
import { filmAtRiskOf, type FilmAtRisk } from './film-at-risk.ts'
import type { HoldNow } from './holds.ts'
import type { Lab } from './lab.ts'
import { keptDays, type LabState } from './lab-state.ts'
import type { Line, LineOf } from './line.ts'
import { metresRun } from './machines.ts'
import { addTotals, shiftAdds, type MaterialTotal, type ShiftAdd } from './shift-adds.ts'
import { actionsOf, causeOf, type Cause } from './shift-causes.ts'
import { blockersOf, type Blocker } from './shift-blockers.ts'
import { handoverIn, type ShiftHandover } from './shift-handover.ts'
import { incidentsOf, type ShiftIncident } from './shift-incidents.ts'
import { instrumentsAt, type InstrumentNow } from './shift-instruments.ts'
import { coversOf, digestText, linesOfShift } from './shift-lines.ts'
import { signaturesOf, type Signature } from './shift-signatures.ts'
import { wasteOf, type ShiftWaste } from './shift-waste.ts'

export interface ShiftException {
  exception: Exception
  /** Opened in this shift, or found open from an earlier one. */
  isCarriedOver: boolean
  isOpen: boolean
  /** From first sight to closure, or to now. */
  minutesOpen: number
  /** The reading that closed it or last re-checked it. */
  recheck?: EntryId
  cause?: Cause
  /** What was done besides the doses: settings, notes, holds. */
  actions: EntryId[]
  filmAtRisk: FilmAtRisk
}

export interface ShiftHold {
  hold: HoldNow
  isCarriedOver: boolean
  minutes: number
}

export interface ShiftStrip {
  id: EntryId
  time: number
  data: LineOf<'strip'>['data']
  /** A strip that was out and that its repeat refuted or confirmed, by the exception it opened. */
  exception?: EntryId
}

export interface ShiftChange {
  id: EntryId
  kind: 'amend' | 'withdraw'
  ref: EntryId
  why: string
  time: number
  person: PersonId | null
  /** By the one who made the entry, or by a supervisor; else somebody must look at it. */
  isByRight: boolean
}

export interface ShiftPage {
  span: ShiftSpan
  now: number
  isOver: boolean
  coverage: Coverage
  /** Film run in the shift, by machine. */
  metres: Record<MachineId, number>
  exceptions: ShiftException[]
  /** Readings between warning and action limit that nobody had to answer. */
  warned: EntryId[]
  holds: ShiftHold[]
  strips: ShiftStrip[]
  adds: ShiftAdd[]
  totals: MaterialTotal[]
  cautions: LineOf<'caution'>[]
  instruments: InstrumentNow[]
  notes: LineOf<'note'>[]
  incidents: ShiftIncident[]
  waste: ShiftWaste
  photos: LineOf<'photo'>[]
  changes: ShiftChange[]
  /** Keyed more than half an hour after it was noted. */
  lateEntries: EntryId[]
  handover: ShiftHandover
  signatures: Signature[]
  blockers: Blocker[]
  /** What a signature under this page covers: the highest number by device, and the text whose SHA-256 is its digest. */
  covers: ReturnType<typeof coversOf>
  digestText: string
}

export interface ShiftPageAsked {
  lab: Lab
  plan: LabPlan
  span: ShiftSpan
  now: number
  /** Cards that must be confirmed before a dose. Without this, every material that names a card needs its confirmation. */
  isGated?: (card: string) => boolean
}

const minute = 60_000

/** Everything about one shift that a supervisor signs for, as data with the entries behind it. */
export const shiftPage = ({ lab, plan, span, now, isGated = () => true }: ShiftPageAsked): ShiftPage => {
  const state = stateFor(lab, span, now)
  const all = linesOfShift(lab.ledger, span)
  const standing = all.filter((line) => !line.withdrawnBy)
  const later = lab.ledger.lines.slice(lab.ledger.indexAt(span.from))
  const adds = shiftAdds(standing, later, state.exceptions, plan)
  const end = Math.min(span.to, now)
  const page = {
    span,
    now,
    isOver: now >= span.to,
    coverage: coverage(lab, plan, span, now),
    metres: Object.fromEntries(plan.machines.map(({ id }) => [id, metresRun(state.machines[id], span.from, end)])) as ShiftPage['metres'],
    exceptions: exceptionsOf(state, later, span, now),
    warned: standing.filter((line) => line.kind === 'reading' && line.data.verdict === 'WARN').map(({ id }) => id),
    holds: holdsOf(state, span, now),
    strips: stripsOf(standing, state),
    adds,
    totals: addTotals(adds),
    cautions: standing.filter((line) => line.kind === 'caution'),
    instruments: instrumentsAt(lab.stateAt(end + 1), plan, standing, end),
    notes: standing.filter((line) => line.kind === 'note'),
    incidents: incidentsOf(standing, plan),
    waste: wasteOf(standing, plan),
    photos: standing.filter((line) => line.kind === 'photo'),
    changes: changesOf(lab, plan, all),
    lateEntries: all.filter(isLate).map(({ id }) => id),
    handover: handoverIn(standing),
    signatures: signaturesOf(lab.ledger, span, all),
    covers: coversOf(lab.ledger.lines),
    digestText: digestText(all),
  }
  return { ...page, blockers: blockersOf(page, { ledger: lab.ledger, plan, plans: state.plans, lines: standing, isGated }) }
}

/** Long after a shift its exceptions are no longer in the state: then the lab is told anew up to a few days after it. */
const stateFor = (lab: Lab, span: ShiftSpan, now: number): LabState => {
  const dayMilliseconds = 24 * 60 * minute
  return now - span.to < (keptDays - 10) * dayMilliseconds ? lab.state : lab.stateAt(span.to + 10 * dayMilliseconds)
}

const exceptionsOf = (state: LabState, later: readonly Line[], span: ShiftSpan, now: number): ShiftException[] =>
  Object.values(state.exceptions.all)
    .filter(({ openedAt, closedAt = Number.POSITIVE_INFINITY }) => openedAt < span.to && closedAt >= span.from)
    .sort((a, b) => a.openedAt - b.openedAt)
    .map((exception) => {
      const cause = causeOf(exception, later)
      const recheck = exception.marks.length > 1 ? exception.marks.at(-1)!.id : undefined
      return {
        exception,
        isCarriedOver: exception.openedAt < span.from,
        isOpen: exception.state !== 'closed',
        minutesOpen: Math.round(((exception.closedAt ?? now) - exception.openedAt) / minute),
        filmAtRisk: filmAtRiskOf(state, exception, now),
        actions: actionsOf(exception, later),
        ...(cause ? { cause } : {}),
        ...(recheck ? { recheck } : {}),
      }
    })

const holdsOf = (state: LabState, span: ShiftSpan, now: number): ShiftHold[] =>
  Object.values(state.holds)
    .filter(({ from, released }) => from < span.to && (released?.at ?? Number.POSITIVE_INFINITY) >= span.from)
    .sort((a, b) => a.from - b.from)
    .map((hold) => ({ hold, isCarriedOver: hold.from < span.from, minutes: Math.round(((hold.released?.at ?? now) - hold.from) / minute) }))

const stripsOf = (lines: readonly Line[], state: LabState): ShiftStrip[] =>
  lines.flatMap((line) => {
    if (line.kind !== 'strip') return []
    const exception = Object.values(state.exceptions.all).find(({ marks }) => marks.some(({ id }) => id === line.id))
    return [{ id: line.id, time: line.time, data: line.data, ...(exception ? { exception: exception.id } : {}) }]
  })

const changesOf = (lab: Lab, plan: LabPlan, lines: readonly Line[]): ShiftChange[] =>
  lines.flatMap((line) => {
    if ((line.kind !== 'amend' && line.kind !== 'withdraw') || line.withdrawnBy) return []
    const changed = lab.ledger.line(line.data.ref)
    const role = plan.people.find(({ id }) => id === line.person)?.role
    const isByRight = role === 'supervisor' || (line.person !== null && changed?.person === line.person)
    return [{ id: line.id, kind: line.kind, ref: line.data.ref, why: line.data.why, time: line.time, person: line.person, isByRight }]
  })

/** Beyond this an entry was not made at the time of the event. Common practice, no source. */
const contemporaryMinutes = 30

const isLate = (line: Line): boolean => line.enteredAt - line.time > contemporaryMinutes * minute
