import type { LabPlan } from '../plan/lab-plan.ts'
import type { MaterialId } from '../plan/ids.ts'
import type { Mark } from '../projections/checks.ts'
import type { Dose, Exception } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'
import { above, below } from '../science/decimal.ts'
import { dosesInto } from './situation.ts'

/** Outside these an answer is no property of the bath: the drum, the volume or the analysis is wrong. */
export const responseBounds = { least: 0.7, most: 1.4 } as const

/** Two readings stand behind every answer, each good to about a step of the instrument. Own choice. */
const stepsOfDoubt = 2
/** An answer whose doubt is more than this share of what was predicted says nothing: a change of less than eight steps. Own choice. */
const mostDoubt = 0.25

/**
 * `learned`: counts. `tooSmall`: lost in the instrument's own spread; it is judged together with the next portion. `unclear`: outside the bounds by
 * no more than the readings' doubt; neither learned nor a reason to stop. `mixedDoses`: something else was poured between the two readings.
 * `outOfBounds`: not learned, and the flow stops.
 */
export type AnswerKind = 'learned' | 'tooSmall' | 'unclear' | 'mixedDoses' | 'outOfBounds'

/** How a bath answered one dose, or several small ones together. */
export interface Answer {
  /** The last of the doses that it speaks of. */
  dose: EntryId
  exception: EntryId
  material: MaterialId | 'water'
  pouredAt: number
  readAt: number
  portion: number
  lot?: string
  predictedChange: number
  observedChange: number
  /** observed ÷ predicted. */
  ratio: number
  kind: AnswerKind
}

interface Read {
  dose: Dose & { predicted: NonNullable<Dose['predicted']> }
  before: number
  after: Mark & { value: number }
  isMixed: boolean
}

/** The answers of one exception's doses: each dose against the first reading after it had mixed, small ones added up until they can be told. */
export const answersOf = (lab: LabState, plan: LabPlan, exception: Exception): Answer[] => {
  const check = plan.checks.find(({ id }) => id === exception.check)
  if (check?.kind !== 'reading') return []
  const answers: Answer[] = []
  const pending = new Map<string, { predictedChange: number; from: number }>()
  for (const { dose, before, after, isMixed } of readDoses(lab, exception, check.quantity === 'pH')) {
    const key = `${dose.material}/${dose.lot ?? ''}`
    const sum = isMixed ? undefined : pending.get(key)
    const from = sum?.from ?? dose.predicted.from
    const predictedChange = (sum?.predictedChange ?? 0) + dose.predicted.to - dose.predicted.from
    if (predictedChange === 0) continue
    const observedChange = after.value - from
    const ratio = observedChange / predictedChange
    const kind = isMixed ? 'mixedDoses' : kindOf(ratio, (stepsOfDoubt * check.step) / Math.abs(predictedChange))
    if (kind === 'tooSmall') pending.set(key, { predictedChange, from })
    else pending.delete(key)
    answers.push({
      dose: dose.id, exception: exception.id, material: dose.material, pouredAt: dose.time, readAt: Math.max(after.time, before), portion: dose.portion,
      predictedChange, observedChange, ratio, kind,
      ...(dose.lot ? { lot: dose.lot } : {}),
    })
  }
  return answers
}

/** Doses with the readings before and after them. Whatever is poured moves the pH; a titrated strength is moved by its own material only. */
const readDoses = (lab: LabState, exception: Exception, isPh: boolean): Read[] => {
  const inBath = dosesInto(lab, exception.station)
  return exception.doses.flatMap((dose): Read[] => {
    const after = exception.marks.find((mark): mark is Mark & { value: number } => mark.value !== undefined && mark.time >= dose.mixUntil)
    if (!dose.predicted || !after) return []
    const before = exception.marks.findLast(({ time }) => time <= dose.time)?.time ?? dose.time
    const isMixed = inBath.some((other) => other.id !== dose.id && other.time > before && other.time <= after.time && (isPh || other.material === dose.material))
    return [{ dose: { ...dose, predicted: dose.predicted }, before, after, isMixed }]
  })
}

const kindOf = (ratio: number, doubt: number): AnswerKind => {
  if (above(doubt, mostDoubt)) return 'tooSmall'
  const { least, most } = responseBounds
  if (below(ratio + doubt, least) || above(ratio - doubt, most)) return 'outOfBounds'
  return below(ratio, least) || above(ratio, most) ? 'unclear' : 'learned'
}
