import type { CheckId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import { dueChecks } from './due.ts'
import type { LabState } from './lab-state.ts'
import type { Line } from './line.ts'

export interface InstrumentNow {
  /** As readings name it. */
  instrument: string
  check: CheckId
  /** The last proof, and how it came out. */
  proof?: { id: EntryId; time: number; verdict: 'IN' | 'WARN' | 'ACT' }
  state: 'proved' | 'failed' | 'overdue' | 'never'
  /** Readings of the shift taken with it. */
  readings: number
}

/** Strips are read on this instrument, whatever the check says. */
const stripInstrument = 'densitometer'

/** Every instrument that a check of the plan proves, as it stood at an instant, and how often the shift relied on it. */
export const instrumentsAt = (state: LabState, plan: LabPlan, lines: readonly Line[], at: number): InstrumentNow[] => {
  const due = new Map(dueChecks(state, plan, at).map((it) => [it.check.id, it]))
  const uses = usesByInstrument(plan, lines)
  return plan.checks.flatMap((check): InstrumentNow[] => {
    if (!check.calibrates) return []
    const last = state.checks[check.id]?.recent.findLast(({ time }) => time <= at)
    const waits = due.get(check.id)
    const isOverdue = waits && (waits.status === 'late' || waits.missed > 0)
    return [
      {
        instrument: check.calibrates,
        check: check.id,
        ...(last ? { proof: { id: last.id, time: last.time, verdict: last.verdict } } : {}),
        state: !last ? 'never' : last.verdict === 'ACT' ? 'failed' : isOverdue ? 'overdue' : 'proved',
        readings: uses.get(check.calibrates) ?? 0,
      },
    ]
  })
}

const usesByInstrument = (plan: LabPlan, lines: readonly Line[]): Map<string, number> => {
  const named = new Map(plan.checks.map((check) => [check.id, check.kind === 'reading' ? check.instrument.name : check.kind === 'strip' ? stripInstrument : undefined]))
  const proves = new Set(plan.checks.flatMap(({ id, calibrates }) => (calibrates ? [id] : [])))
  const uses = new Map<string, number>()
  for (const line of lines) {
    if ((line.kind !== 'reading' && line.kind !== 'strip') || line.withdrawnBy || proves.has(line.data.check)) continue
    const instrument = named.get(line.data.check)
    if (instrument) uses.set(instrument, (uses.get(instrument) ?? 0) + 1)
  }
  return uses
}

