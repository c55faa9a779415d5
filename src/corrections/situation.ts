import type { Check } from '../plan/check.ts'
import { checkOf, placeOf } from '../plan/find.ts'
import type { StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judge, type Judged } from '../plan/limits.ts'
import type { Bath, Machine, Station } from '../plan/machine.ts'
import type { Mark } from '../projections/checks.ts'
import type { Dose, Exception } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'

/** What the lab knows beyond the fold and a remedy may need. */
export interface Known {
  /** Figures of the strip that opened or last re-checked the exception: `gamma`, `speed`, … from its entry. */
  stripFigures?: { readonly [figure: string]: number }
  /** Aims of the batch that strip is of, where they are not the plan's. */
  stripAims?: { readonly [figure: string]: number }
  /** Resets of a learned response, each with its reason. */
  resets?: readonly ResponseReset[]
  /** Water of the jacket or for mixing that ice is to cool; never that of a bath. */
  jacket?: { litres: number; fromCelsius: number; toCelsius: number }
  /** Hot and cold water at hand for the wash or for mixing, and how much of the blend is wanted. */
  supply?: { hotCelsius: number; coldCelsius: number; totalLitres: number }
  /** Time–gamma law of this film in this developer, as fitted at the bench. */
  developLaw?: { gammaInfinity: number; ratePerMinute: number }
  /** Lot about to be used, by material; without it, the one last used. */
  lots?: { readonly [material: string]: string }
}

export interface ResponseReset {
  station: StationId
  /** Absent: every material of that station. */
  material?: string
  at: number
  why: string
}

/** An exception with everything about it in reach. */
export interface Situation {
  lab: LabState
  plan: LabPlan
  now: number
  known: Known
  exception: Exception
  check: Check
  station: Station
  machine: Machine
  bath?: Bath
  /** The reading that counts: the newest that was not taken while a dose was mixing. */
  mark: Mark
  value?: number
  judged?: Judged
}

export const situationOf = (lab: LabState, plan: LabPlan, id: EntryId, now: number, known: Known = {}): Situation | undefined => {
  const exception = lab.exceptions.all[id]
  if (!exception) return undefined
  const check = checkOf(plan, exception.check)
  const { machine, station } = placeOf(plan, exception.station)
  const mark = countingMark(exception)
  return {
    lab, plan, now, known, exception, check, station, machine, mark,
    ...(station.bath ? { bath: station.bath } : {}),
    ...(mark.value !== undefined ? { value: mark.value } : {}),
    ...(mark.value !== undefined && check.kind === 'reading' ? { judged: judge(check.limits, mark.value) } : {}),
  }
}

const countingMark = ({ marks, doses }: Exception): Mark =>
  marks.findLast(({ time }) => !doses.some((dose) => dose.time <= time && time < dose.mixUntil)) ?? marks.at(-1)!

/** Doses put into a station's bath for any exception, the oldest first. An add that answers no exception is not among them. */
export const dosesInto = (lab: LabState, station: StationId): (Dose & { exception: EntryId })[] =>
  Object.values(lab.exceptions.all)
    .filter((it) => it.station === station)
    .flatMap((it) => it.doses.map((dose) => ({ ...dose, exception: it.id })))
    .sort((a, b) => a.time - b.time)

/** Number of the portion that comes next: every dose given before the reading that counts was of an earlier one. */
export const nextPortion = ({ exception, mark }: Pick<Situation, 'exception' | 'mark'>): number =>
  Math.max(0, ...exception.doses.filter(({ time }) => time <= mark.time).map(({ portion }) => portion)) + 1
