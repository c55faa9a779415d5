import type { CheckId, MachineId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { MachineState } from '../plan/schedule.ts'
import type { EntryId } from '../record/ids.ts'
import { dueChecks } from './due.ts'
import { openExceptions, phaseAt, type Phase } from './exceptions.ts'
import { standingHolds } from './holds.ts'
import type { Lab } from './lab.ts'
import type { Line, LineOf } from './line.ts'
import { spanAt } from './machines.ts'
import { openMixes } from './mixes.ts'
import { instrumentsAt } from './shift-instruments.ts'

/** One thing that the next shift finds and looks at before it takes over. `ref` names it in the record. */
export type WalkItem =
  | { what: 'machine'; ref: MachineId; state: MachineState; metresPerMinute: number }
  | { what: 'hold'; ref: EntryId; machine: MachineId }
  | { what: 'exception'; ref: EntryId; machine: MachineId; station: StationId; phase: Exclude<Phase, 'closed'>; mixUntil?: number }
  | { what: 'mixing'; ref: EntryId; station: StationId; until: number }
  | { what: 'batch'; ref: EntryId; station: StationId }
  | { what: 'late'; ref: CheckId; dueAt: number }
  | { what: 'instrument'; ref: CheckId; state: 'failed' | 'overdue' | 'never' }

/** Longer than any bath takes to mix. */
const longestMixingMilliseconds = 24 * 3_600_000

/**
 * The walk-down at an instant: every machine as it stands, then what is held, out of limits, mixing, begun, late or not to be relied on. It is told
 * from the log alone, so that whoever leaves and whoever comes see the same, and what one of them settles meanwhile is gone for both.
 */
export const walkDown = (lab: Lab, plan: LabPlan, now: number): WalkItem[] => {
  const { state, ledger } = lab
  const open = openExceptions(state.exceptions)
  const recent = ledger.lines.slice(ledger.indexAt(now - longestMixingMilliseconds))
  const due = dueChecks(state, plan, now)
  return [
    ...plan.machines.map(({ id }): WalkItem => {
      const span = spanAt(state.machines[id], now)
      return { what: 'machine', ref: id, state: span.state, metresPerMinute: span.metresPerMinute }
    }),
    ...standingHolds(state.holds).map(({ id, machine }): WalkItem => ({ what: 'hold', ref: id, machine })),
    ...open.map((exception): WalkItem => {
      const phase = phaseAt(exception, now) as Exclude<Phase, 'closed'>
      const mixUntil = exception.doses.reduce((latest, dose) => Math.max(latest, dose.mixUntil), 0)
      return { what: 'exception', ref: exception.id, machine: exception.machine, station: exception.station, phase, ...(phase === 'mixing' ? { mixUntil } : {}) }
    }),
    ...recent.filter((line) => isMixing(line, now) && !open.some(({ doses }) => doses.some(({ id }) => id === line.id))).map((line): WalkItem => {
      const { station, mixSeconds } = (line as LineOf<'add'>).data
      return { what: 'mixing', ref: line.id, station, until: line.time + mixSeconds * 1000 }
    }),
    ...openMixes(state.mixes).map(({ id, station }): WalkItem => ({ what: 'batch', ref: id, station })),
    ...due.flatMap(({ check, status, dueAt, missed }): WalkItem[] => (status === 'late' || missed > 0 ? [{ what: 'late', ref: check.id, dueAt }] : [])),
    ...instrumentsAt(state, plan, [], now).flatMap(({ check, state: proof }): WalkItem[] => (proof === 'proved' ? [] : [{ what: 'instrument', ref: check, state: proof }])),
  ]
}

const isMixing = (line: Line, now: number): boolean => line.kind === 'add' && !line.withdrawnBy && line.time <= now && line.time + line.data.mixSeconds * 1000 > now

/** As an accepted hand-over names what was looked at. */
export const walkedOf = (items: readonly WalkItem[]): { what: string; ref: string }[] => items.map(({ what, ref }) => ({ what, ref }))
