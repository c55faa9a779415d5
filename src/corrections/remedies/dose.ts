import type { Material } from '../../plan/material.ts'
import type { CautionCard } from '../../safety/card.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { cardsNeeded } from '../../safety/needed.ts'
import { thingsOf } from '../../safety/things.ts'
import { Refusal } from '../../science/refusal.ts'
import { isFixing } from '../bath-now.ts'
import type { DoseAsked } from '../interlock.ts'
import { refusedBy } from '../interlocks.ts'
import { mixingTime, type Wait } from '../mixing-time.ts'
import { isAcid, isAcidOrAlkali } from '../nature.ts'
import type { PlannedDose, Remedy, RemedyCode } from '../remedy.ts'
import { responseOf } from '../response.ts'
import { say, type Refused, type Say } from '../say.ts'
import { SealedDose, type DoseInside, type Working } from '../sealed-dose.ts'
import { dosesInto, nextPortion, type Situation } from '../situation.ts'
import { finite, largestTaken, portionLimits, sized } from './portion.ts'

/** What a computation says of a dose, before portions, limits and the learned response. */
export interface ComputedDose {
  /** For the whole of the correction, in the material's unit, at a response of 1. */
  whole: number
  /** What may go in before the next reading, at most. */
  firstShare: number
  /** The reading that this dose moves, and where the model sees it after an amount, at a response of 1. Absent where nothing that is read here moves. */
  predicts?: { quantity: string; from: number; after(amount: number): number }
  working: Working
}

export interface DoseRemedy {
  code: RemedyCode
  says: Say
  how: readonly Say[]
  wait: Wait
  source: string
  /** `factor` is for the working that is shown; the amounts come back at a response of 1. */
  compute(factor: number): ComputedDose
}

/** The cards that a dose asks for: the material's own, and one more for what this bath makes of it. */
export const cardsOf = (plan: LabPlan, material: Material, station: DoseAsked['station']): CautionCard[] => {
  const own = cardOf(plan, material.caution)
  const situation = isAcid(material)
    ? cardOf(plan, 'op-acid-dose')
    : isFixing(station) && thingsOf(material.substance).includes('sulfite')
      ? cardOf(plan, 'op-sulfite-acid-bath')
      : undefined
  return [own, situation].filter((card) => card !== undefined)
}

export const askedOf = (situation: Situation, material: Material | 'water'): DoseAsked | undefined => {
  const { lab, plan, now, machine, station, bath, exception, mark, known } = situation
  if (!bath) return undefined
  const card = material === 'water' ? undefined : cardOf(plan, material.caution)
  const lot = material === 'water' ? undefined : known.lots?.[material.id]
  return {
    lab, plan, now, machine, station, bath, material, exception, mark, resets: known.resets ?? [],
    ...(card ? { card } : {}),
    ...(lot ? { lot } : {}),
  }
}

/** A dose of a material as a remedy: refused with its reason, or computed, portioned, bounded and sealed. */
export const doseRemedy = (situation: Situation, material: Material, of: DoseRemedy): Remedy | undefined => {
  const { exception, station, bath, lab, plan, now, known } = situation
  const asked = askedOf(situation, material)
  if (!asked || !bath) return undefined
  const remedy: Remedy = {
    id: `${of.code}:${material.id}`, code: of.code, exception: exception.id, station: station.id, says: of.says, how: of.how, source: of.source,
  }
  const refused = refusedBy(asked)
  if (refused) return { ...remedy, refused }

  const response = responseOf(lab, plan, { station: station.id, material: material.id, lot: known.lots?.[material.id], now, resets: known.resets })
  const portion = nextPortion(situation)
  // One person alone never pours more acid or alkali than was computed: a weak answer may be a weak drum, but also a wrong one.
  const alone = isAcidOrAlkali(material) ? Math.max(1, response.factor) : response.factor
  const worked = computedOr(of, alone)
  if ('code' in worked) return { ...remedy, refused: worked }
  const computed = response.learnedFrom ? worked : halvedWherePh(worked)
  const limits = portionLimits(asked, material)
  const taken = largestTaken(exception, material)
  const planned = sized(computed, alone, limits, { portion, taken })
  const raised = response.factor < alone ? sized(computed, response.factor, limits, { portion, taken }) : undefined
  const scaledUp = raised && raised.amount > planned.amount ? { amount: raised.amount, ...modelOf(computed, raised.amount), working: of.compute(response.factor).working } : undefined
  const cards = cardsOf(plan, material, station)
  const needsCaution = cardsNeeded(cards)
  const inside: DoseInside = {
    amount: planned.amount,
    unit: material.unit,
    wholeAmount: planned.whole,
    ...modelOf(computed, planned.amount),
    limits: finite(limits),
    working: computed.working,
    ...(scaledUp ? { scaledUp } : {}),
  }
  const lastDose = dosesInto(lab, station.id).findLast((dose) => dose.exception === exception.id && dose.material === material.id)
  const lock = { exception: exception.id, station: station.id, material: material.id, cards: needsCaution, after: lastDose?.time ?? exception.openedAt - 1 }
  const dose: PlannedDose = {
    material: material.id,
    unit: material.unit,
    portion,
    staged: planned.amount < planned.whole,
    needsCaution,
    cards: cards.map(({ id }) => id),
    secondPerson: { required: material.secondPerson ?? false, offersScaledUp: scaledUp !== undefined },
    rechecks: rechecksFor(situation, inside.model, response.learnedFrom),
    response: { factor: response.factor, learnedFrom: response.learnedFrom },
    amount: new SealedDose(inside, lock),
    ...(computed.predicts ? { predicted: expected(computed.predicts, planned.amount, response.factor) } : {}),
    ...(planned.cappedBy ? { cappedBy: planned.cappedBy } : {}),
  }
  return { ...remedy, dose, wait: mixingTime(bath, of.wait, { slowAcid: isAcid(material) && isFixing(station) }) }
}

/**
 * A lot that this bath has not answered yet may be twice as strong as its label says: of what moves the pH no more than half goes in before it has been
 * read again, be it as mild as it may. "Half, re-check, then the rest": common practice, no source.
 */
const halvedWherePh = (computed: ComputedDose): ComputedDose =>
  computed.predicts?.quantity === 'pH' ? { ...computed, firstShare: Math.min(computed.firstShare, 0.5) } : computed

/** Expected changes of fewer steps of the meter than this are read twice, as long as the lot is not known here. Own choice. */
const tellingSteps = 16

/** A second reading costs two minutes at a pH meter, and half an hour at the burette: it is asked for at the meter alone. */
const rechecksFor = ({ check }: Situation, model: DoseInside['model'], learnedFrom: number): number =>
  check.kind === 'reading' && model?.quantity === 'pH' && learnedFrom === 0 && Math.abs(model.to - model.from) < tellingSteps * check.step ? 2 : 1

/** A calculation that has no answer for this bath is a reason, not a fault. */
const computedOr = (of: DoseRemedy, factor: number): ComputedDose | Refused => {
  try {
    return of.compute(factor)
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return {
      code: 'noAnswer',
      facts: { field: error.field, allowed: error.allowed, reason: error.code },
      doFirst: say('askSupervisor'),
      source: of.source,
    }
  }
}

const modelOf = ({ predicts }: ComputedDose, amount: number): Pick<DoseInside, 'model'> =>
  predicts ? { model: { quantity: predicts.quantity, from: predicts.from, to: predicts.after(amount), toTwice: predicts.after(2 * amount) } } : {}

/** What the reading is expected to be, with the response that this bath has shown. */
const expected = ({ quantity, from, after }: NonNullable<ComputedDose['predicts']>, amount: number, factor: number) => ({
  quantity,
  from,
  to: from + (after(amount) - from) * factor,
})
