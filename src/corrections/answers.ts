import type { LabPlan } from '../plan/lab-plan.ts'
import type { MaterialId } from '../plan/ids.ts'
import type { Mark } from '../projections/checks.ts'
import type { Exception } from '../projections/exceptions.ts'
import type { LabState } from '../projections/lab.ts'
import type { EntryId } from '../record/ids.ts'
import { above, below } from '../science/decimal.ts'
import { dosesInto } from './situation.ts'

/** Outside these an answer is no property of the bath: the drum, the volume or the analysis is wrong. */
export const responseBounds = { least: 0.7, most: 1.4 } as const

/** Two readings stand behind every answer, each good to about a step of the instrument. Own choice. */
const stepsOfDoubt = 2
/** A small dose stops the flow only where it is out by more: between two readings the bath drifts as well, by about a step. Own choice; false alarms are counted on simulated baths. */
const stepsOfProof = 99
/** An answer whose doubt is more than this share of what was predicted says nothing: a change of less than eight steps. Own choice. */
const mostDoubt = 0.25

/**
 * `learned`: counts. `tooSmall`: lost in the instrument's own spread. `unclear`: outside the bounds by no more than the readings' doubt; neither
 * learned nor a reason to stop. Both are judged together with the answers that follow. `mixedDoses`: something else was poured between the two
 * readings. `outOfBounds`: not learned, and the flow stops.
 */
export type AnswerKind = 'learned' | 'tooSmall' | 'unclear' | 'mixedDoses' | 'outOfBounds'

/** What one dose did, by the readings before and after it. */
export interface Change {
  dose: EntryId
  exception: EntryId
  material: MaterialId | 'water'
  pouredAt: number
  readAt: number
  portion: number
  lot?: string
  predictedChange: number
  observedChange: number
  /** Step of the instrument, in the unit of the changes. */
  step: number
  isMixed: boolean
}

/** How a bath answered one dose, or several small ones together: then the changes are their sums, and the ids those of the last. */
export interface Answer extends Change {
  /** observed ÷ predicted. */
  ratio: number
  kind: AnswerKind
}

/** Each dose of an exception against the first reading after it had mixed. Whatever is poured moves the pH; a titrated strength is moved by its own material only. */
export const changesOf = (lab: LabState, plan: LabPlan, exception: Exception): Change[] => {
  const check = plan.checks.find(({ id }) => id === exception.check)
  if (check?.kind !== 'reading') return []
  const { step } = check
  const isPh = check.quantity === 'pH'
  const inBath = dosesInto(lab, exception.station)
  return exception.doses.flatMap((dose): Change[] => {
    const after = exception.marks.find((mark): mark is Mark & { value: number } => mark.value !== undefined && mark.time >= dose.mixUntil)
    const { predicted } = dose
    if (!predicted || !after || predicted.to === predicted.from) return []
    const before = exception.marks.findLast(({ time }) => time <= dose.time)?.time ?? dose.time
    const isMixed = inBath.some((other) => other.id !== dose.id && other.time > before && other.time <= after.time && (isPh || other.material === dose.material))
    return [{
      dose: dose.id, exception: exception.id, material: dose.material, pouredAt: dose.time, readAt: Math.max(after.time, before), portion: dose.portion,
      predictedChange: predicted.to - predicted.from, observedChange: after.value - predicted.from, step, isMixed,
      ...(dose.lot ? { lot: dose.lot } : {}),
    }]
  })
}

interface Pending {
  predictedChange: number
  observedChange: number
  exceptions: ReadonlySet<EntryId>
}

/**
 * The answers of one material in one bath, the oldest change first. A dose too small to tell is added to the next ones of its lot, in this exception
 * or a later one, until they can be told. Portions that follow one another share their readings, so that the doubt stays that of two readings;
 * readings of different exceptions are independent, and their doubt grows with the square root of their number.
 */
export const answersOf = (changes: readonly Change[]): Answer[] => {
  const pending = new Map<string, Pending>()
  return changes.map((change) => {
    const key = `${change.lot ?? ''}/${change.step}`
    const sum = change.isMixed ? undefined : pending.get(key)
    const predictedChange = (sum?.predictedChange ?? 0) + change.predictedChange
    const observedChange = (sum?.observedChange ?? 0) + change.observedChange
    const exceptions = new Set([...(sum?.exceptions ?? []), change.exception])
    const ratio = observedChange / predictedChange
    const kind = change.isMixed ? 'mixedDoses' : kindOf(ratio, (Math.sqrt(exceptions.size) * change.step) / Math.abs(predictedChange))
    if (kind === 'tooSmall' || kind === 'unclear') pending.set(key, { predictedChange, observedChange, exceptions })
    else if (kind !== 'mixedDoses') pending.delete(key)
    return { ...change, predictedChange, observedChange, ratio, kind }
  })
}

const kindOf = (ratio: number, doubtOfStep: number): AnswerKind => {
  const { least, most } = responseBounds
  const doubt = stepsOfDoubt * doubtOfStep
  const isSmall = above(doubt, mostDoubt)
  const proof = isSmall ? stepsOfProof * doubtOfStep : doubt
  if (below(ratio + proof, least) || above(ratio - proof, most)) return 'outOfBounds'
  if (isSmall) return 'tooSmall'
  return below(ratio, least) || above(ratio, most) ? 'unclear' : 'learned'
}
