import type { Material } from '../../plan/material.ts'
import type { CautionCard } from '../../safety/card.ts'
import { cardById } from '../../safety/cards.ts'
import { cardsNeeded } from '../../safety/needed.ts'
import { thingsOf } from '../../safety/things.ts'
import { Refusal } from '../../science/refusal.ts'
import { isFixing } from '../bath-now.ts'
import { headroomLeftLitres, safeSingleDose } from '../dose-limits.ts'
import type { DoseAsked } from '../interlock.ts'
import { refusedBy } from '../interlocks.ts'
import { mixingTime, type Wait } from '../mixing-time.ts'
import { isAcid, isAcidOrAlkali } from '../nature.ts'
import type { PlannedDose, Remedy, RemedyCode } from '../remedy.ts'
import { responseOf } from '../response.ts'
import { say, type Refused, type Say } from '../say.ts'
import { SealedDose, type DoseInside, type DoseUnit, type Working } from '../sealed-dose.ts'
import { dosesInto, nextPortion, type Situation } from '../situation.ts'

/** What a computation says of a dose, before portions, limits and the learned response. */
export interface ComputedDose {
  /** For the whole of the correction, in the material's unit, at a response of 1. */
  whole: number
  /** What may go in before the next reading, at most. */
  firstShare: number
  quantity: string
  from: number
  /** The model's reading after an amount (same unit as `whole`), at a response of 1. */
  after(amount: number): number
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
export const cardsOf = (material: Material, station: DoseAsked['station']): CautionCard[] => {
  const own = cardById(material.caution)
  const situation = isAcid(material)
    ? cardById('op-acid-dose')
    : isFixing(station) && thingsOf(material.substance).includes('sulfite')
      ? cardById('op-sulfite-acid-bath')
      : undefined
  return [own, situation].filter((card) => card !== undefined)
}

export const askedOf = (situation: Situation, material: Material | 'water'): DoseAsked | undefined => {
  const { lab, plan, now, machine, station, bath, exception, mark, known } = situation
  if (!bath) return undefined
  const card = material === 'water' ? undefined : cardById(material.caution)
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
  const computed = computedOr(of, alone)
  if ('code' in computed) return { ...remedy, refused: computed }
  const limits = portionLimits(asked, material)
  const size = (factor: number): Sized => sized(computed, factor, limits, { portion, answered: largestAnswered(response.history, exception.id) })
  const planned = size(alone)
  const raised = response.factor < alone ? size(response.factor) : undefined
  const scaledUp = raised && raised.amount > planned.amount ? { amount: raised.amount, model: modelOf(computed, raised.amount), working: of.compute(response.factor).working } : undefined
  const cards = cardsOf(material, station)
  const needsCaution = cardsNeeded(cards)
  const inside: DoseInside = {
    amount: planned.amount,
    unit: material.unit,
    wholeAmount: planned.whole,
    model: modelOf(computed, planned.amount),
    working: computed.working,
    ...(scaledUp ? { scaledUp } : {}),
  }
  const lastDose = dosesInto(lab, station.id).findLast((dose) => dose.exception === exception.id && dose.material === material.id)
  const lock = { exception: exception.id, station: station.id, material: material.id, cards: needsCaution, after: lastDose?.time ?? exception.openedAt - 1 }
  const dose: PlannedDose = {
    material: material.id,
    unit: material.unit as DoseUnit,
    portion,
    staged: planned.amount < planned.whole,
    needsCaution,
    cards: cards.map(({ id }) => id),
    secondPerson: { required: material.secondPerson ?? false, offersScaledUp: scaledUp !== undefined },
    predicted: { quantity: computed.quantity, from: computed.from, to: computed.from + (computed.after(planned.amount) - computed.from) * response.factor },
    response: { factor: response.factor, learnedFrom: response.learnedFrom },
    amount: new SealedDose(inside, lock),
    ...(planned.cappedBy ? { cappedBy: planned.cappedBy } : {}),
  }
  return { ...remedy, dose, wait: mixingTime(bath, of.wait, { slowAcid: isAcid(material) && isFixing(station) }) }
}

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

const modelOf = ({ quantity, from, after }: ComputedDose, amount: number): NonNullable<DoseInside['model']> => ({ quantity, from, to: after(amount) })

interface Limits {
  single: number
  room: number
}
const portionLimits = (asked: DoseAsked, material: Material): Limits => ({
  single: safeSingleDose(material, asked.bath) ?? Number.POSITIVE_INFINITY,
  room: material.unit === 'mL' ? headroomLeftLitres(asked) * 1000 : Number.POSITIVE_INFINITY,
})

interface Sized {
  amount: number
  whole: number
  cappedBy?: 'safeSingleDose' | 'headroom'
}

/**
 * The size of a portion. The first is the share that the calculation allows before a new reading; a later one may be the whole of what is left,
 * but no more than the larger of that share and the largest portion that this bath has already answered as it should.
 */
const sized = ({ whole, firstShare }: ComputedDose, factor: number, { single, room }: Limits, { portion, answered }: { portion: number; answered: number }): Sized => {
  const all = whole / factor
  const share = all * firstShare
  const wanted = portion === 1 ? share : Math.min(all, Math.max(share, answered))
  const amount = Math.min(wanted, single, room)
  if (amount === wanted) return { amount, whole: all }
  return { amount, whole: all, cappedBy: single <= room ? 'safeSingleDose' : 'headroom' }
}

const largestAnswered = (history: ReturnType<typeof responseOf>['history'], exception: Situation['exception']['id']): number =>
  Math.max(0, ...history.filter((it) => it.exception === exception && it.kind === 'learned').map(({ poured }) => poured))
