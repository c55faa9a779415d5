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
/** A small dose, or one portion of several, stops the flow only where it is out by more: between two readings the bath drifts as well, by about a step. Own choice; false alarms are counted on simulated baths. */
const stepsOfProof = 3
/** An answer whose doubt is more than this share of what was predicted says nothing: a change of less than eight steps. Own choice. */
const mostDoubt = 0.25

/**
 * `learned`: counts. `tooSmall`: lost in the instrument's own spread. `unclear`: so near the bounds that the readings cannot tell; neither
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
  /** The observed change as it would be if the model were a straight line through its prediction: so many times the predicted one as the material acted stronger. */
  actedChange: number
  /** Step of the instrument, in the unit of the changes. */
  step: number
  isMixed: boolean
}

/** How a bath answered one dose, or several small ones together: then the changes are their sums, and the ids those of the last. */
export interface Answer extends Change {
  /** Observed ÷ predicted, along the model's curve. */
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
    const isMixed = inBath.some((other) => other.id !== dose.id && other.time >= before && other.time < after.time && (isPh || other.material === dose.material))
    return [{
      dose: dose.id, exception: exception.id, material: dose.material, pouredAt: dose.time, readAt: Math.max(after.time, before), portion: dose.portion,
      predictedChange: predicted.to - predicted.from, observedChange: after.value - predicted.from,
      actedChange: actedOf(predicted, after.value), step, isMixed,
      ...(dose.lot ? { lot: dose.lot } : {}),
    }]
  })
}

/** A buffer grows with the acid that is poured, so that twice the acid moves the pH less than twice as far: the change is read off the model's curve. */
const actedOf = ({ from, to, toTwice }: NonNullable<Dose['predicted']>, found: number): number => {
  const past = (found - to) / (to - from)
  if (toTwice === undefined || past <= 0 || (toTwice - to) / (to - from) <= 0) return found - from
  return to - from + ((found - to) * (to - from)) / (toTwice - to)
}

interface Pending {
  predictedChange: number
  observedChange: number
  actedChange: number
  exceptions: ReadonlySet<EntryId>
  /** Not told yet, and carried over into the next exception. */
  isOpen: boolean
}

/**
 * The answers of one material in one bath, the oldest change first. Portions that follow one another in an exception are judged together, from its
 * first reading to its last, so that the doubt is that of two readings and the one between them cancels. A dose too small to tell is added to
 * the next ones of its lot in later exceptions too; their readings are independent, and the doubt grows with the square root of their number.
 * A portion that is out beyond proof by itself stops the flow however the others were: it may come from another drum.
 */
export const answersOf = (changes: readonly Change[]): Answer[] => {
  const pending = new Map<string, Pending>()
  return changes.map((change) => {
    const key = `${change.lot ?? ''}/${change.step}`
    const before = change.isMixed ? undefined : pending.get(key)
    const sum = before && (before.isOpen || before.exceptions.has(change.exception)) ? before : undefined
    const predictedChange = (sum?.predictedChange ?? 0) + change.predictedChange
    const observedChange = (sum?.observedChange ?? 0) + change.observedChange
    const actedChange = (sum?.actedChange ?? 0) + change.actedChange
    const exceptions = new Set([...(sum?.exceptions ?? []), change.exception])
    const together = { ...change, predictedChange, observedChange, actedChange, ratio: actedChange / predictedChange }
    if (change.isMixed) return { ...together, kind: 'mixedDoses' }
    const ownRatio = change.actedChange / change.predictedChange
    if (isOut(ownRatio, (stepsOfProof * change.step) / Math.abs(change.predictedChange))) {
      pending.delete(key)
      return { ...change, ratio: ownRatio, kind: 'outOfBounds' }
    }
    const kind = kindOf(together.ratio, (Math.sqrt(exceptions.size) * change.step) / Math.abs(predictedChange))
    if (kind === 'outOfBounds') pending.delete(key)
    else pending.set(key, { predictedChange, observedChange, actedChange, exceptions, isOpen: kind !== 'learned' })
    return { ...together, kind }
  })
}

const isOut = (ratio: number, doubt: number): boolean => below(ratio + doubt, responseBounds.least) || above(ratio - doubt, responseBounds.most)

const kindOf = (ratio: number, doubtOfStep: number): AnswerKind => {
  const doubt = stepsOfDoubt * doubtOfStep
  if (above(doubt, mostDoubt)) return isOut(ratio, stepsOfProof * doubtOfStep) ? 'outOfBounds' : 'tooSmall'
  if (isOut(ratio, doubt)) return 'outOfBounds'
  // Learned only where the bounds hold with a step to spare: a lot of another strength must not slip in under the readings' doubt.
  const spare = doubtOfStep
  return below(ratio - spare, responseBounds.least) || above(ratio + spare, responseBounds.most) ? 'unclear' : 'learned'
}
