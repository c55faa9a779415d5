import type { LabPlan } from '../plan/lab-plan.ts'
import type { Line } from './line.ts'

/** What a plan has, for quick asking. */
export interface Names {
  checks: ReadonlySet<string>
  stations: ReadonlySet<string>
  machines: ReadonlySet<string>
}

export const namesOf = (plan: LabPlan): Names => ({
  checks: new Set(plan.checks.map(({ id }) => id)),
  stations: new Set(plan.machines.flatMap(({ stations }) => stations.map(({ id }) => id))),
  machines: new Set(plan.machines.map(({ id }) => id)),
})

/** A line about a check, station or machine that the plan does not have is kept in the log and counted nowhere. */
export const speaksOf = (names: Names, line: Line): boolean => {
  const data = line.data as { check?: string; station?: string; machine?: string }
  return (
    (data.check === undefined || names.checks.has(data.check)) &&
    (data.machine === undefined || names.machines.has(data.machine)) &&
    (data.station === undefined || names.stations.has(data.station))
  )
}
