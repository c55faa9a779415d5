import type { Quantity } from '../plan/check.ts'
import type { StationKind } from '../plan/machine.ts'
import type { Remedy } from './remedy.ts'
import type { Situation } from './situation.ts'

export type Side = 'low' | 'high'

/** Which exceptions a row speaks of. Everything that is given must fit. */
export interface When {
  at: readonly StationKind[]
  quantity?: Quantity
  /** Constituent or strip figure. */
  of?: string | readonly string[]
  side?: Side
  /** The reading it is judged with, as last found: in limits, or out on a side. */
  paired?: { quantity: Quantity; is: 'in' | 'out'; side?: Side }
  /** A look that was not right. */
  look?: true
  /** A control strip: where its figures lie. Figures that are not named may lie anywhere. */
  strip?: { readonly [figure: string]: Side | 'in' }
}

/** When production is kept off the machine for it. */
export interface HoldRule {
  /** `none`, `always`, `confirmed` (a second strip agrees), or beyond a bound of the reading. */
  when: 'none' | 'always' | 'confirmed' | 'beyond'
  /** Bounds of the reading itself. */
  above?: number
  below?: number
  /** Distance from the aim. */
  offAimBy?: number
  unit?: string
}

/** One line of the trade's table: the fault, where to look first, what then to do in this order, when to read again. */
export interface Row {
  code: string
  when: When
  lookFirst: readonly string[]
  /** Remedies, in order; advice without a number is a code that the screens have a sentence for. */
  then: readonly (Builder | string)[]
  /** Wait before the re-check: turnovers of the bath, or minutes, or both. */
  recheck: { turnovers?: number; minutes?: number; strip?: boolean; passes?: number }
  hold: HoldRule
  source: string
}

/** Makes remedies of one kind for an exception; none where it does not apply. */
export type Builder = (situation: Situation, row: Row) => readonly Remedy[]
