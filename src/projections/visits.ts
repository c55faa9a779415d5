import type { StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Line } from './line.ts'

/** One stay at one place within a round. */
export interface Visit {
  station: StationId
  /** Seconds from coming there to the last thing read there. */
  seconds: number
  /** What was read, looked at and stripped there. */
  checks: number
  /** How much of it with the label of the place scanned. */
  atTank: number
}

/**
 * The time that a round spent at each place, in the order in which they were first visited. Each entry says how long its maker had been there, so that
 * the longest of one stay is the stay; what was noted on paper says nothing and counts nothing.
 */
export const visitsOf = (lines: readonly Line[], plan: LabPlan, round: string): Visit[] => {
  const visits = new Map<StationId, Visit>()
  let before: { station: StationId; seconds: number } | undefined
  for (const line of lines) {
    if (line.withdrawnBy || (line.kind !== 'reading' && line.kind !== 'look' && line.kind !== 'strip') || line.data.round !== round) continue
    const station = plan.checks.find(({ id }) => id === line.data.check)?.station
    if (!station) continue
    const visit = visits.get(station) ?? { station, seconds: 0, checks: 0, atTank: 0 }
    visits.set(station, visit)
    visit.checks++
    if (line.data.atTank) visit.atTank++
    const seconds = line.data.stationSeconds
    if (seconds === undefined) continue
    // Fewer seconds than before at the same place: somebody went away and came back.
    const isSameStay = before?.station === station && seconds >= before.seconds
    visit.seconds += isSameStay ? seconds - before!.seconds : seconds
    before = { station, seconds }
  }
  return [...visits.values()]
}
