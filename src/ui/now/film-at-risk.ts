import type { MachineId } from '../../plan/ids.ts'
import { openExceptions } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab.ts'
import { metresRun } from '../../projections/machines.ts'

export interface FilmAtRisk {
  metres: number
  /** The last good check; undefined where there was none and the exception's own reading is all that is known. */
  since: number
}

/**
 * Film run since the last reading that was not out, for whatever is out on a machine now: the longest of these counts.
 * What is only waiting for its repeat counts too, as nobody knows yet.
 */
export const filmAtRisk = (lab: LabState, machine: MachineId, now: number): FilmAtRisk | undefined => {
  const since = openExceptions(lab.exceptions)
    .filter((it) => it.machine === machine)
    .map((it) => lab.checks[it.check]?.recent.findLast(({ time, verdict }) => time < it.openedAt && verdict !== 'ACT')?.time ?? it.openedAt)
  if (!since.length) return undefined
  const from = Math.min(...since)
  return { metres: metresRun(lab.machines[machine], from, now), since: from }
}
