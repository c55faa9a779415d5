import { checksOfMachine } from '../plan/find.ts'
import type { CheckId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import type { EntryId } from '../record/ids.ts'
import { openExceptions, type Exception } from './exceptions.ts'
import { canHold } from './holding.ts'
import { standingHolds } from './holds.ts'
import type { LabState } from './lab-state.ts'
import { metresRun, type MachineNow } from './machines.ts'

/** Film run since the last good check: speed × time, from what was said of the machine. Leader and standstill do not count. */
export interface FilmAtRisk {
  metres: number
  /** The instant of the last good check; where there never was one, when the machine was first spoken of. */
  since: number
  /** The check whose last good result that was; undefined where there was none. */
  check?: CheckId
  /** The good result itself. */
  good?: EntryId
  /** `inDoubt`: something is out, and this film must be tagged. `routine`: all is well, and this is what has run since that was last seen. */
  kind: 'inDoubt' | 'routine'
}

/** When the machine was first spoken of. */
const began = (machine: MachineNow | undefined, now: number): number => Math.min(machine?.spans[0]?.from ?? now, now)

/**
 * Film at risk of one exception: from the last time its check was within action limits before it, until it closed, or until now. Of a check that
 * was never good, everything that the machine has run.
 */
export const filmAtRiskOf = (state: LabState, exception: Exception, now: number): FilmAtRisk => {
  const machine = state.machines[exception.machine]
  const good = exception.lastGood
  const since = good?.time ?? began(machine, exception.openedAt)
  return {
    kind: 'inDoubt', since, metres: metresRun(machine, since, Math.min(exception.closedAt ?? now, now)), check: exception.check, ...(good ? { good: good.id } : {}),
  }
}

/**
 * Film at risk on a machine. Where something is out, or the machine is held for it, the longest of these counts: that film must be tagged.
 * Where nothing is, the film that has run since a check that can hold the machine was last good.
 */
export const filmAtRisk = (state: LabState, plan: LabPlan, machine: Machine, now: number): FilmAtRisk => {
  const held = standingHolds(state.holds, machine.id).flatMap(({ exception }) => (exception ? [state.exceptions.all[exception]] : []))
  const doubted = [...openExceptions(state.exceptions).filter((it) => it.machine === machine.id), ...held.filter((it) => it !== undefined)]
  const inDoubt = doubted.map((exception) => filmAtRiskOf(state, exception, now)).sort((a, b) => a.since - b.since)[0]
  if (inDoubt) return inDoubt
  const [newest] = checksOfMachine(plan, machine)
    .filter(canHold)
    .flatMap((check) => {
      const good = state.checks[check.id]?.recent.findLast(({ time, verdict }) => time <= now && verdict !== 'ACT')
      return good ? [{ check: check.id, good: good.id, since: good.time }] : []
    })
    .sort((a, b) => b.since - a.since)
  const since = newest?.since ?? began(state.machines[machine.id], now)
  return { kind: 'routine', since, metres: metresRun(state.machines[machine.id], since, now), ...(newest ? { check: newest.check, good: newest.good } : {}) }
}
