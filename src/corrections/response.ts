import type { MaterialId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { LabState } from '../projections/lab.ts'
import { planAt } from '../projections/plans.ts'
import { answersOf, changesOf, responseBounds, type Answer } from './answers.ts'
import type { ResponseReset } from './situation.ts'

/** Answers fade: the stock ages, the bath is replenished. Own choice. */
const halfLifeMilliseconds = 14 * 24 * 3_600_000

export interface Response {
  /** Bounded 0.7 to 1.4; 1 where nothing is known. Divides the computed amount. */
  factor: number
  /** Number of answers that it rests on. */
  learnedFrom: number
  /** Every answer of this material in this bath since it was last new or reset, the oldest first, those not learned among them. */
  history: readonly Answer[]
  /** The lot for which the factor holds. */
  lot?: string
}

export interface ResponseAsked {
  station: StationId
  material: MaterialId
  /** The lot about to be used; without it, the one last used. Another lot starts at 1. */
  lot?: string | undefined
  now: number
  resets?: readonly ResponseReset[] | undefined
}

/**
 * How a bath has answered a material, per material, strength and lot: observed change ÷ the change that the model predicted for what was poured.
 *
 * factor = exp(m · W ÷ (W + 1)), where m is the weighted median of ln(ratio), each answer weighing 2^(−age ÷ 14 days), and W the sum of the
 * weights. The 1 stands for one answer exactly as predicted: with few or old answers the factor goes back to 1. The median lets no single
 * answer run away with it. The form is our own; that it helps and does no harm is shown on simulated baths.
 *
 * @example responseOf(lab, plan, { station, material, now }).factor // 1 before anything was learned
 */
export const responseOf = (lab: LabState, plan: LabPlan, { station, material, lot, now, resets = [] }: ResponseAsked): Response => {
  const since = startedAnew(lab, station, material, resets, now)
  const made = madeText(plan, station, material)
  const changes = Object.values(lab.exceptions.all)
    .filter((it) => it.station === station)
    .flatMap((it) => changesOf(lab, plan, it))
    .filter((it) => it.material === material && it.pouredAt >= since && it.readAt <= now)
    .filter(({ pouredAt }) => madeText(planAt(lab.plans, pouredAt)?.plan ?? plan, station, material) === made)
    .sort((a, b) => a.readAt - b.readAt)
  const history = answersOf(changes)
  const wanted = lot ?? lastLot(lab, material, now)
  // Later portions of an exception are judged with the earlier ones: its last answer speaks for all of them.
  const learned = history.filter((it) => it.kind === 'learned' && it.lot === wanted && history.findLast(({ exception, kind }) => exception === it.exception && kind === 'learned') === it)
  return { factor: factorFrom(learned, now), learnedFrom: learned.length, history, ...(wanted ? { lot: wanted } : {}) }
}

export const factorFrom = (learned: readonly Pick<Answer, 'ratio' | 'readAt'>[], now: number): number => {
  const weighed = learned
    .map(({ ratio, readAt }) => ({ log: Math.log(ratio), weight: 2 ** (-(now - readAt) / halfLifeMilliseconds) }))
    .sort((a, b) => a.log - b.log)
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0)
  if (total === 0) return 1
  const factor = Math.exp((weightedMedian(weighed, total) * total) / (total + 1))
  return Math.min(responseBounds.most, Math.max(responseBounds.least, factor))
}

/** Where half of the weight lies below and half above; between two values that share the middle, half way. */
const weightedMedian = (sorted: readonly { log: number; weight: number }[], total: number): number => {
  let below = 0
  for (const [index, { log, weight }] of sorted.entries()) {
    below += weight
    if (Math.abs(below - total / 2) < 1e-9 * total) return (log + (sorted[index + 1]?.log ?? log)) / 2
    if (below > total / 2) return log
  }
  return 0
}

/** A new bath, or a reset with a reason: what was answered before is not counted. */
const startedAnew = (lab: LabState, station: StationId, material: MaterialId, resets: readonly ResponseReset[], now: number): number => {
  const replaced = Object.values(lab.exceptions.all).flatMap((it) =>
    it.station === station && it.closeReason === 'bathReplaced' && it.closedAt !== undefined && it.closedAt <= now ? [it.closedAt] : [],
  )
  const reset = resets.flatMap((it) => (it.station === station && (it.material ?? material) === material && it.at <= now ? [it.at] : []))
  return Math.max(Number.NEGATIVE_INFINITY, ...replaced, ...reset)
}

const lastLot = (lab: LabState, material: MaterialId, now: number): string | undefined =>
  Object.values(lab.exceptions.all)
    .flatMap(({ doses }) => doses)
    .filter((dose) => dose.material === material && dose.time <= now)
    .sort((a, b) => a.time - b.time)
    .at(-1)?.lot

/** What an answer was computed with: the material's strength and the bath's volume. Where the plan has set either right since, it no longer speaks. */
const madeText = (plan: LabPlan, at: StationId, material: MaterialId): string => {
  const bath = plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === at)?.bath
  return JSON.stringify([plan.materials.find(({ id }) => id === material)?.strength ?? null, bath?.litres ?? null])
}

/**
 * The answer that stops the flow: the last one of this material and lot in this bath lay outside the bounds, and nobody has yet found out why.
 * Found out means: another lot, strength or volume set right in the plan, a new bath, a fault of instrument or sample named on closing, or a
 * reset with its reason.
 */
export const unexplained = (lab: LabState, plan: LabPlan, asked: ResponseAsked): Answer | undefined => {
  const { history, lot } = responseOf(lab, plan, asked)
  const last = history.findLast((it) => it.lot === lot && (it.kind === 'learned' || it.kind === 'outOfBounds'))
  if (last?.kind !== 'outOfBounds') return undefined
  const isNamed = Object.values(lab.exceptions.all).some(
    (it) => it.station === asked.station && it.closedAt !== undefined && it.closedAt >= last.readAt && (it.closeReason === 'instrumentFault' || it.closeReason === 'sampleFault'),
  )
  return isNamed ? undefined : last
}
