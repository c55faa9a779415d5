import type { CheckId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { Line, LineOf } from './line.ts'

/** What ran off one way, summed, with the entries behind the sum. */
export interface RunOffTotal {
  waste: string
  destination: LineOf<'runOff'>['data']['destination']
  litres: number
  entries: EntryId[]
}

/** A reading of what goes to the drain. */
export interface EffluentReading {
  id: EntryId
  time: number
  check: CheckId
  keyed: string
  unit: string
  verdict: 'IN' | 'WARN' | 'ACT'
}

export interface ShiftWaste {
  /** The most first. */
  runOffs: RunOffTotal[]
  drumsOut: LineOf<'drumOut'>[]
  effluent: EffluentReading[]
  notes: LineOf<'note'>[]
}

/** Effluent and waste of a shift, from its lines that stand. */
export const wasteOf = (lines: readonly Line[], plan: LabPlan): ShiftWaste => {
  const stations = new Set(plan.machines.flatMap((machine) => machine.stations.flatMap(({ id, kind }) => (kind === 'effluent' ? [id] : []))))
  const checks = new Set(plan.checks.flatMap(({ id, station }) => (stations.has(station) ? [id] : [])))
  const totals = new Map<string, RunOffTotal>()
  for (const { id, kind, data } of lines) {
    if (kind !== 'runOff') continue
    const { waste, destination, litres } = data
    const key = `${waste} ${destination.to} ${destination.to === 'drum' ? destination.drum : ''}`
    const total = totals.get(key) ?? { waste, destination, litres: 0, entries: [] }
    total.litres += litres
    total.entries.push(id)
    totals.set(key, total)
  }
  return {
    runOffs: [...totals.values()].sort((a, b) => b.litres - a.litres),
    drumsOut: lines.filter((line) => line.kind === 'drumOut'),
    effluent: lines.flatMap(({ id, time, kind, data }) =>
      kind === 'reading' && checks.has(data.check) ? [{ id, time, check: data.check, keyed: data.keyed, unit: data.unit, verdict: data.verdict }] : [],
    ),
    notes: lines.filter((line): line is LineOf<'note'> => line.kind === 'note' && line.data.about === 'waste'),
  }
}
