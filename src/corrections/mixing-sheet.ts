import type { PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { CautionCard } from '../safety/card.ts'
import { cardsNeeded, type CardNeeded } from '../safety/needed.ts'
import { builtInFor, cardOf } from '../safety/own-cards.ts'
import { thingsOf } from '../safety/things.ts'
import { evaluate } from '../science/evaluate.ts'
import type { Given } from '../science/field.ts'
import { mixBatch } from '../science/mix/batch.ts'
import { Refusal } from '../science/refusal.ts'
import type { Substance } from '../science/substances.ts'
import { say, type Say } from './say.ts'
import { SealedDose, type RevealAsked } from './sealed-dose.ts'

export type Formula = Given<typeof mixBatch.inputs>['formula']

/** One thing to dissolve. Its amount is sealed behind its caution like any other dose. */
export interface SheetStep {
  order: number
  substance: Substance
  form?: string
  unit: 'g' | 'mL'
  /** How it goes in, and why it was moved from the formula's order. */
  note: string
  needsCaution: readonly CardNeeded[]
  cards: readonly string[]
  amount: SealedDose
}

export interface Tick {
  order: number
  at: number
  by: PersonId | null
  /** Temperature of the mix when the step went in. */
  celsius?: number
  lot?: string
}

/** A batch in the making. Pure data but for the sealed amounts: `beginSheet` makes them again from formula and litres. */
export interface MixingSheet {
  formula: Formula
  litres: number
  station: StationId
  /** The station that the mix is for: its checks give the limits of the certificate. */
  meantFor: StationId
  startedAt: number
  startWaterLitres: number
  toLitres: number
  moved: readonly string[]
  steps: readonly SheetStep[]
  ticks: readonly Tick[]
  certificate?: Certificate
}

export type SheetMade = { ok: true; sheet: MixingSheet } | { ok: false; why: Say }

export interface SheetAsked {
  formula: Formula
  litres: number
  /** Where it is mixed. */
  station: StationId
  meantFor: StationId
  startedAt: number
  startWaterFraction?: number | undefined
  /** Words of the laboratory that are added to the cards. */
  cautions?: LabPlan['cautions']
}

/** A mixing sheet for a batch: order, amounts behind their cautions, water to begin and to end with; or why it must not be mixed so. */
export const beginSheet = ({ formula, litres, station, meantFor, startedAt, startWaterFraction, cautions }: SheetAsked): SheetMade => {
  try {
    const { result } = evaluate(mixBatch, { formula, litres, ...(startWaterFraction === undefined ? {} : { startWaterFraction }) })
    const steps = result.steps.map(({ order, substance, form, amount, unit, note }): SheetStep => {
      const its = cardsFor(substance, cautions)
      const needsCaution = cardsNeeded(its)
      return {
        order, substance, unit, note, needsCaution, cards: its.map(({ id }) => id),
        ...(form ? { form } : {}),
        // Mixing begins with its own start: a confirmation from an earlier batch does not count.
        amount: new SealedDose({ amount, unit }, { station, cards: needsCaution, after: startedAt - 1 }),
      }
    })
    const uncarded = steps.find((step) => !step.cards.length && !harmless.includes(step.substance))
    if (uncarded) return { ok: false, why: say('noCautionCard', { substance: uncarded.substance }) }
    return {
      ok: true,
      sheet: { formula, litres, station, meantFor, startedAt, startWaterLitres: result.startWaterLitres, toLitres: result.toLitres, moved: result.moved, steps, ticks: [] },
    }
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    return { ok: false, why: say('mixRefused', { field: error.field, allowed: error.allowed, reason: error.code }) }
  }
}

/** The substance's own card, and one for the work where acid is poured or developing agents are weighed. */
const cardsFor = (substance: Substance, cautions: LabPlan['cautions']): CautionCard[] => {
  const work = thingsOf(substance).includes('acid') ? 'op-acid-dose' : thingsOf(substance).includes('developer') ? 'op-powder-developer' : undefined
  return [builtInFor(substance)?.id, work].flatMap((id) => (id === undefined ? [] : (cardOf({ cautions }, id) ?? [])))
}

/** Salts that carry no hazard and have no card. From memory. */
const harmless: readonly string[] = ['sodiumSulfate', 'sodiumChloride', 'potassiumChloride', 'sodiumAcetate']

export type Ticked = { ok: true; sheet: MixingSheet } | { ok: false; why: Say; needs?: readonly CardNeeded[] }

/** The step that is next; undefined when everything is in. */
export const nextStep = ({ steps, ticks }: MixingSheet): SheetStep | undefined => steps[ticks.length]

/** Ticks a step as done. Only the next one, and only with its caution confirmed: order is what keeps a mix clear. */
export const tick = (sheet: MixingSheet, order: number, asked: RevealAsked & { celsius?: number | undefined; lot?: string | undefined }): Ticked => {
  const next = nextStep(sheet)
  if (!next) return { ok: false, why: say('allIn') }
  if (order !== next.order) return { ok: false, why: say('outOfOrder', { next: next.substance }) }
  const revealed = next.amount.reveal(asked)
  if (!revealed.ok) return { ok: false, why: say('cautionFirst'), needs: revealed.needs }
  const { now, person, celsius, lot } = asked
  return {
    ok: true,
    sheet: { ...sheet, ticks: [...sheet.ticks, { order, at: now, by: person, ...(celsius !== undefined ? { celsius } : {}), ...(lot ? { lot } : {}) }] },
  }
}

export interface Certificate {
  at: number
  by: PersonId | null
  pH: number
  specificGravity: number
  label: string
  /** The strip that proved a developer. */
  strip?: string
}
