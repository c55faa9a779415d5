import type { LabPlan } from '../plan/lab-plan.ts'
import type { MaterialId } from '../plan/ids.ts'
import type { Exception } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'
import { above, below } from '../science/decimal.ts'
import { dosesInto } from './situation.ts'

/** Outside these an answer is no property of the bath: the drum, the volume or the analysis is wrong. */
export const responseBounds = { least: 0.7, most: 1.4 } as const

/** A change of fewer steps of the instrument than this says little: two readings are each good to about a step or two. Own choice. */
export const clearSteps = 10

/**
 * `learned`: counts. `tooSmall`: lost in the instrument's own spread. `mixedDoses`: more than one dose stands between the two readings.
 * `outOfBounds`: not learned, and the flow stops.
 */
export type AnswerKind = 'learned' | 'tooSmall' | 'mixedDoses' | 'outOfBounds'

/** How a bath answered one dose. */
export interface Answer {
  dose: EntryId
  exception: EntryId
  material: MaterialId | 'water'
  poured: number
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

/** The answers of one exception's doses: each dose against the first reading after it had mixed. */
export const answersOf = (lab: LabState, plan: LabPlan, exception: Exception): Answer[] => {
  const check = plan.checks.find(({ id }) => id === exception.check)
  if (check?.kind !== 'reading') return []
  const inBath = dosesInto(lab, exception.station)
  return exception.doses.flatMap((dose): Answer[] => {
    const after = exception.marks.find((mark) => mark.value !== undefined && mark.time >= dose.mixUntil)
    if (!dose.predicted || !after) return []
    const before = exception.marks.findLast(({ time }) => time <= dose.time)?.time ?? dose.time
    const predictedChange = dose.predicted.to - dose.predicted.from
    if (predictedChange === 0) return []
    const observedChange = after.value! - dose.predicted.from
    const ratio = observedChange / predictedChange
    // Whatever is poured moves the pH; a titrated strength is moved by its own material only.
    const disturbing = inBath.some(
      (other) => other.id !== dose.id && other.time > before && other.time <= after.time && (check.quantity === 'pH' || other.material === dose.material),
    )
    const isSmall = below(Math.abs(predictedChange), clearSteps * check.step)
    const isOutside = above(ratio, responseBounds.most) || below(ratio, responseBounds.least)
    return [
      {
        dose: dose.id, exception: exception.id, material: dose.material, poured: dose.poured.amount, pouredAt: dose.time, readAt: after.time,
        portion: dose.portion, predictedChange, observedChange, ratio,
        kind: disturbing ? 'mixedDoses' : isSmall ? 'tooSmall' : isOutside ? 'outOfBounds' : 'learned',
        ...(dose.lot ? { lot: dose.lot } : {}),
      },
    ]
  })
}
