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

/**
 * One reading is good to about a step of its instrument, the mean of several to less, and their variances add. The figures are our own choice, made on
 * simulated baths; what they do was then counted on others.
 */
const judging = {
  /** A portion that is out by itself, by so many times its doubt, stops the flow whatever was answered before: it may come from another drum. */
  alone: 2.5,
  /** The answers of one lot together, in the last exceptions, stop it where they are out by so many times theirs. */
  together: 1,
  /** Nothing is learned from a change whose doubt is more than this share of it. */
  mostDoubt: 0.18,
  /** Nor where the bounds do not hold by so many times the doubt: a lot of another strength must not slip in under it. */
  spare: 0.7,
  /** A bath drifts on the way it went out while it mixes, by about a step: an answer may look weaker than it was, hardly ever stronger. */
  driftSteps: 1,
  /** Exceptions that are judged together. */
  remembered: 5,
} as const

/** Readings of one bath this close in time are one reading, and better than one. Own choice. */
const togetherMilliseconds = 20 * 60_000

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
  /** How many readings stand behind it, before and after. */
  readings: { before: number; after: number }
  isMixed: boolean
}

/** How a bath answered one dose, or several small ones together: then the changes are their sums, and the ids those of the last. */
export interface Answer extends Change {
  /** Observed ÷ predicted, along the model's curve. */
  ratio: number
  kind: AnswerKind
}

/** The readings before each dose against those after it had mixed. Whatever is poured moves the pH; a titrated strength is moved by its own material only. */
export const changesOf = (lab: LabState, plan: LabPlan, exception: Exception): Change[] => {
  const check = plan.checks.find(({ id }) => id === exception.check)
  if (check?.kind !== 'reading') return []
  const { step } = check
  const isPh = check.quantity === 'pH'
  const inBath = dosesInto(lab, exception.station)
  const marks = exception.marks.filter((mark): mark is Read => mark.value !== undefined)
  return exception.doses.flatMap((dose): Change[] => {
    const { predicted } = dose
    if (!predicted || predicted.to === predicted.from) return []
    const mixed = Math.max(Number.NEGATIVE_INFINITY, ...exception.doses.filter(({ time }) => time < dose.time).map(({ mixUntil }) => mixUntil))
    const next = Math.min(Number.POSITIVE_INFINITY, ...exception.doses.filter(({ time }) => time > dose.time).map(({ time }) => time))
    const before = near(marks.filter(({ time }) => time >= mixed && time <= dose.time), 'newest')
    const after = near(marks.filter(({ time }) => time >= dose.mixUntil && time <= next), 'oldest')
    const [first] = after
    if (!first) return []
    const isMixed = inBath.some((other) => other.id !== dose.id && other.time >= (before.at(-1)?.time ?? dose.time) && other.time < first.time && (isPh || other.material === dose.material))
    const observedChange = mean(after) - (before.length ? mean(before) : predicted.from)
    return [{
      dose: dose.id, exception: exception.id, material: dose.material, pouredAt: dose.time, readAt: Math.max(after.at(-1)!.time, dose.time), portion: dose.portion,
      predictedChange: predicted.to - predicted.from, observedChange, actedChange: actedOf(predicted, predicted.from + observedChange), step,
      readings: { before: Math.max(1, before.length), after: after.length }, isMixed,
      ...(dose.lot ? { lot: dose.lot } : {}),
    }]
  })
}

type Read = Mark & { value: number }
const mean = (marks: readonly Read[]): number => marks.reduce((sum, { value }) => sum + value, 0) / marks.length
const near = (marks: readonly Read[], to: 'newest' | 'oldest'): Read[] => {
  const at = (to === 'newest' ? marks.at(-1) : marks[0])?.time
  return at === undefined ? [] : marks.filter(({ time }) => Math.abs(time - at) <= togetherMilliseconds)
}

/** A buffer grows with the acid that is poured, so that twice the acid moves the pH less than twice as far: the change is read off the model's curve. */
const actedOf = ({ from, to, toTwice }: NonNullable<Dose['predicted']>, found: number): number => {
  const past = (found - to) / (to - from)
  if (toTwice === undefined || past <= 0 || (toTwice - to) / (to - from) <= 0) return found - from
  return to - from + ((found - to) * (to - from)) / (toTwice - to)
}

/** What was seen of a lot in one exception: portions that follow one another add up, and the readings between them cancel. */
type Seen = Pick<Change, 'exception' | 'predictedChange' | 'observedChange' | 'actedChange' | 'readings'>

interface Lot {
  /** Of the last exceptions, the oldest first: what is judged together. */
  seen: Seen[]
  /** Since something was last learned. */
  untold: Seen[]
  isTold: boolean
}

/**
 * The answers of one material in one bath, the oldest change first. Three questions to each: is this portion out of bounds by itself; is its lot out of
 * bounds by the last exceptions together, though no portion is by itself; and is it known well enough to learn from.
 */
export const answersOf = (changes: readonly Change[]): Answer[] => {
  const lots = new Map<string, Lot>()
  return changes.map((change): Answer => {
    if (change.isMixed) return { ...change, ratio: change.actedChange / change.predictedChange, kind: 'mixedDoses' }
    const key = `${change.lot ?? ''}/${change.step}`
    const before = lots.get(key)
    const isGoingOn = before && (!before.isTold || before.untold.some(({ exception }) => exception === change.exception))
    const seen = adding(before?.seen ?? [], change).slice(-judging.remembered)
    const untold = adding(isGoingOn ? before.untold : [], change)
    const [own, lot, learning] = [together([change], change.step), together(seen, change.step), together(untold, change.step)]
    const answer = (of: Together, kind: AnswerKind): Answer => ({ ...change, predictedChange: of.predictedChange, observedChange: of.observedChange, actedChange: of.actedChange, ratio: of.ratio, kind })
    const out = isOut(own, judging.alone) ? own : isOut(lot, judging.together) ? lot : undefined
    if (out) {
      lots.delete(key)
      return answer(out, 'outOfBounds')
    }
    const kind = above(learning.doubt, judging.mostDoubt) ? 'tooSmall' : holds(learning) && holds(lot) ? 'learned' : 'unclear'
    lots.set(key, { seen, untold, isTold: kind === 'learned' })
    return answer(learning, kind)
  })
}

const adding = (list: readonly Seen[], { exception, predictedChange, observedChange, actedChange, readings }: Change): Seen[] => {
  const last = list.at(-1)
  if (last?.exception !== exception) return [...list, { exception, predictedChange, observedChange, actedChange, readings }]
  return [
    ...list.slice(0, -1),
    {
      exception,
      predictedChange: last.predictedChange + predictedChange,
      observedChange: last.observedChange + observedChange,
      actedChange: last.actedChange + actedChange,
      readings: { before: last.readings.before, after: readings.after },
    },
  ]
}

interface Together extends Omit<Seen, 'exception' | 'readings'> {
  ratio: number
  /** Of the ratio, from the readings' own spread: their variances add. */
  doubt: number
  /** By how much drift may have made it look weaker. */
  drift: number
}

const together = (list: readonly Seen[], step: number): Together => {
  const of = (field: 'predictedChange' | 'observedChange' | 'actedChange'): number => list.reduce((sum, it) => sum + it[field], 0)
  const predictedChange = of('predictedChange')
  const steps = Math.abs(predictedChange) / step
  const variance = list.reduce((sum, { readings }) => sum + 1 / readings.before + 1 / readings.after, 0)
  return {
    predictedChange, observedChange: of('observedChange'), actedChange: of('actedChange'), ratio: of('actedChange') / predictedChange,
    doubt: Math.sqrt(variance) / steps, drift: (list.length * judging.driftSteps) / steps,
  }
}

const isOut = ({ ratio, doubt, drift }: Together, times: number): boolean =>
  below(ratio + times * doubt + drift, responseBounds.least) || above(ratio - times * doubt, responseBounds.most)

const holds = ({ ratio, doubt }: Together): boolean =>
  !below(ratio - judging.spare * doubt, responseBounds.least) && !above(ratio + judging.spare * doubt, responseBounds.most)
