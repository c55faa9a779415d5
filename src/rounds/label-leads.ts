import type { CheckId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { dueAtMachine } from '../projections/due.ts'
import type { LabState } from '../projections/lab.ts'
import type { Round } from './kept-round.ts'
import type { TankLabel } from './tank-label.ts'

/** Where a scanned label leads: a step of the open round, the one check that is due there, or the place, where there are several or none. */
export type LabelLeads =
  | { to: 'step'; at: number; station: StationId }
  | { to: 'check'; check: CheckId; station: StationId }
  | { to: 'station'; station: StationId }
  /** The plan in force does not have it: an old label, or another machine's. */
  | { to: 'nowhere' }

export const labelLeads = (label: TankLabel, { plan, lab, round, now }: { plan: LabPlan; lab: LabState; round: Round | undefined; now: number }): LabelLeads => {
  const named = 'check' in label ? plan.checks.find(({ id }) => id === label.check) : undefined
  const station = 'station' in label ? label.station : named?.station
  const machine = plan.machines.find(({ stations }) => stations.some(({ id }) => id === station))
  if (!station || !machine) return { to: 'nowhere' }
  const isHere = (check: CheckId): boolean => (named ? check === named.id : plan.checks.some((it) => it.id === check && it.station === station))
  const at = round?.steps.findIndex((step) => !step.outcome && isHere(step.check)) ?? -1
  if (at >= 0) return { to: 'step', at, station }
  if (named) return { to: 'check', check: named.id, station }
  const due = dueAtMachine(lab, plan, machine, now).filter(({ check, status }) => check.station === station && status !== 'ahead')
  return due.length === 1 ? { to: 'check', check: due[0]!.check.id, station } : { to: 'station', station }
}

/** Whether a label is the one of this check: its own, or that of its place. */
export const isLabelOf = (label: TankLabel, check: { id: CheckId; station: StationId }): boolean =>
  'check' in label ? label.check === check.id : label.station === check.station
