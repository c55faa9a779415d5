import type { ReadingCheck } from '../../plan/check.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { forecastOf, type Forecast } from '../../projections/forecast.ts'
import type { LabState } from '../../projections/lab-state.ts'
import type { Ledger } from '../../projections/ledger.ts'

/** What drifts towards a limit, the soonest first, from the marks that the state keeps: no walk through the whole log. */
export const comingOf = (plan: LabPlan, state: LabState, ledger: Ledger, now: number): { check: ReadingCheck; forecast: Forecast }[] => {
  const changes = new Map<string, number>()
  for (let index = ledger.lines.length - 1; index >= 0; index--) {
    const line = ledger.lines[index]!
    const station = line.withdrawnBy ? undefined : line.kind === 'add' || line.kind === 'runOff' ? line.data.station : line.kind === 'mixEnd' ? line.data.newBath : undefined
    if (station && !changes.has(station)) changes.set(station, line.time)
  }
  return plan.checks
    .flatMap((check) => {
      if (check.kind !== 'reading') return []
      const points = (state.checks[check.id]?.recent ?? []).flatMap(({ time, value }) => (value === undefined ? [] : [{ time, value }]))
      const changed = changes.get(check.station)
      const forecast = forecastOf(points, changed === undefined ? [] : [{ kind: 'add', time: changed }], check, check.limits)
      return forecast && forecast.latest > now ? [{ check, forecast }] : []
    })
    .sort((a, b) => a.forecast.at - b.forecast.at)
}
