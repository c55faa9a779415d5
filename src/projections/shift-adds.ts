import type { MaterialId, PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { DataOf } from '../record/kinds.ts'
import type { Exceptions } from './exceptions.ts'
import type { Line } from './line.ts'

type Add = DataOf<'add'>

export interface ShiftAdd {
  id: EntryId
  time: number
  person: PersonId | null
  station: StationId
  material: MaterialId | 'water'
  poured: Add['poured']
  planned?: Add['planned']
  overruled?: string
  lot?: string
  secondPerson?: PersonId
  exception?: EntryId
  caution?: EntryId
  mixUntil: number
  /** The reading after the mixing time that told its answer; undefined while there is none. */
  recheck?: EntryId
}

export interface MaterialTotal {
  material: MaterialId | 'water'
  /** In mL for liquids, g for solids. */
  total: number
  unit: 'mL' | 'g'
  lots: string[]
  adds: ShiftAdd[]
}

const inBase: Readonly<Record<Add['poured']['unit'], { factor: number; unit: 'mL' | 'g' }>> = {
  mL: { factor: 1, unit: 'mL' },
  L: { factor: 1000, unit: 'mL' },
  g: { factor: 1, unit: 'g' },
  kg: { factor: 1000, unit: 'g' },
}

/** The adds of a shift, in order. `later` are the lines from the shift on, in which the re-checks are looked for. */
export const shiftAdds = (lines: readonly Line[], later: readonly Line[], exceptions: Exceptions, plan: LabPlan): ShiftAdd[] =>
  lines.flatMap((line): ShiftAdd[] => {
    if (line.kind !== 'add' || line.withdrawnBy) return []
    const { station, material, poured, planned, overruled, lot, secondPerson, exception, caution, mixSeconds } = line.data
    const mixUntil = line.time + mixSeconds * 1000
    const recheck = recheckOf(line.data, mixUntil, later, exceptions, plan)
    return [
      {
        id: line.id, time: line.time, person: line.person, station, material, poured, mixUntil,
        ...(planned ? { planned } : {}), ...(overruled ? { overruled } : {}), ...(lot ? { lot } : {}), ...(secondPerson ? { secondPerson } : {}),
        ...(exception ? { exception } : {}), ...(caution ? { caution } : {}), ...(recheck ? { recheck } : {}),
      },
    ]
  })

/** For an exception, its own check; for an add that answers none, any reading in the same bath, of the quantity it was meant to move if it says so. */
const recheckOf = (add: Add, mixUntil: number, later: readonly Line[], exceptions: Exceptions, plan: LabPlan): EntryId | undefined => {
  const exception = add.exception ? exceptions.all[add.exception] : undefined
  if (exception) return exception.marks.filter(({ time }) => time >= mixUntil)[(add.rechecks ?? 1) - 1]?.id
  const checks = new Set(
    plan.checks.flatMap((check) => (check.kind === 'reading' && check.station === add.station && (!add.predicted || check.quantity === add.predicted.quantity) ? [check.id] : [])),
  )
  return later.find((line) => line.kind === 'reading' && !line.withdrawnBy && line.time >= mixUntil && checks.has(line.data.check))?.id
}

/** By material, the most used first. */
export const addTotals = (adds: readonly ShiftAdd[]): MaterialTotal[] => {
  const totals = new Map<string, MaterialTotal>()
  for (const add of adds) {
    const { factor, unit } = inBase[add.poured.unit]
    // A material poured now by volume, now by weight cannot be summed: two lines.
    const key = `${add.material} ${unit}`
    const total = totals.get(key) ?? { material: add.material, total: 0, unit, lots: [], adds: [] }
    total.total += add.poured.amount * factor
    if (add.lot && !total.lots.includes(add.lot)) total.lots.push(add.lot)
    total.adds.push(add)
    totals.set(key, total)
  }
  return [...totals.values()].sort((a, b) => b.total - a.total)
}
