import type { MaterialId, PersonId, StationId } from '../plan/ids.ts'
import type { LineOf } from '../projections/line.ts'
import type { EntryId } from '../record/ids.ts'
import { confirmationStandsMilliseconds, type CardNeeded } from '../safety/needed.ts'
import type { Step } from '../science/calculation.ts'

export type DoseUnit = 'mL' | 'L' | 'g' | 'kg'

export interface Working {
  calculation: string
  inputs: Record<string, unknown>
  result: Record<string, unknown>
  steps: readonly Step[]
}

/** What is inside: everything from which the amount could be read. */
export interface DoseInside {
  amount: number
  unit: DoseUnit
  /** The whole of which this portion is a part, where it is staged. */
  wholeAmount?: number
  working?: Working | undefined
  /** The most that may go in at once, in `unit`. */
  limits?: { single?: number; room?: number }
  /** What the model, without a learned response, says of this very portion: what the bath's answer is held against. */
  model?: { quantity: string; from: number; to: number; toTwice?: number }
  /** The portion with a response below 1 made good: only for two persons. */
  scaledUp?: Pick<DoseInside, 'amount' | 'model' | 'working'>
}

/** What a confirmation must fit to count for this dose. */
export interface DoseLock {
  exception?: EntryId
  station: StationId
  /** Absent where the substance is none of the plan's materials (a step of a mixing sheet). */
  material?: MaterialId | 'water'
  cards: readonly CardNeeded[]
  /** A confirmation speaks for one dose: it counts only if it was given after this instant, that of the dose before. */
  after: number
}

export type CautionLine = Pick<LineOf<'caution'>, 'id' | 'time' | 'person' | 'data' | 'withdrawnBy'>

export interface Revealed {
  ok: true
  amount: number
  unit: DoseUnit
  wholeAmount?: number
  working?: Working
  model?: NonNullable<DoseInside['model']>
  limits?: NonNullable<DoseInside['limits']>
  /** The amount was raised above the computed one because this bath answers less; a second person stands by it. */
  scaledUp: boolean
  secondPerson?: PersonId
  /** The confirmations, the material's own card first; absent where the card of a harmless material stands beside the amount. */
  cautions: readonly EntryId[]
}
export type Reveal = Revealed | { ok: false; needs: readonly CardNeeded[] }

export interface RevealAsked {
  /** Confirmations of the log, in any order; those that do not fit are ignored. */
  cautions: readonly CautionLine[]
  /** Who is about to pour. A confirmation by somebody else does not count. */
  person: PersonId | null
  now: number
  /** A second person at the tank, who is not the first. */
  secondPerson?: PersonId | undefined
}

/**
 * A dose whose amount cannot be read without its caution. The numbers are in a private field: they are in no property that a screen could
 * draw, in no JSON and in no log line, and `reveal` is the only way to them.
 */
export class SealedDose {
  readonly #inside: DoseInside
  readonly #lock: DoseLock

  constructor(inside: DoseInside, lock: DoseLock) {
    this.#inside = inside
    this.#lock = lock
  }

  reveal({ cautions, person, now, secondPerson }: RevealAsked): Reveal {
    const fits = this.#lock.cards.map((needed) => cautions.find((line) => this.#counts(line, needed, { person, now })))
    const missing = this.#lock.cards.filter((_, index) => !fits[index])
    if (missing.length) return { ok: false, needs: missing }
    const { amount, unit, wholeAmount, working, model, limits, scaledUp } = this.#inside
    const two = secondPerson !== undefined && secondPerson !== person
    const raised = two && scaledUp ? scaledUp : undefined
    const shown = raised ?? { amount, model, working }
    return {
      ok: true,
      amount: shown.amount,
      unit,
      scaledUp: raised !== undefined,
      cautions: fits.map((line) => line!.id),
      ...(two ? { secondPerson } : {}),
      ...(wholeAmount !== undefined ? { wholeAmount } : {}),
      ...(shown.working ? { working: shown.working } : {}),
      ...(shown.model ? { model: shown.model } : {}),
      ...(limits ? { limits } : {}),
    }
  }

  #counts({ time, person: by, data, withdrawnBy }: CautionLine, needed: CardNeeded, { person, now }: Pick<RevealAsked, 'person' | 'now'>): boolean {
    const { exception, station, material, after } = this.#lock
    return (
      !withdrawnBy &&
      data.card === needed.card &&
      data.version === needed.version &&
      needed.lines.every((key) => data.lines.includes(key)) &&
      data.exception === exception &&
      (data.station === undefined || data.station === station) &&
      data.material === material &&
      by === person &&
      time > after &&
      time <= now &&
      now - time <= confirmationStandsMilliseconds
    )
  }
}
