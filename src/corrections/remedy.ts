import type { MaterialId, StationId } from '../plan/ids.ts'
import type { EntryId } from '../record/ids.ts'
import type { CardNeeded } from '../safety/needed.ts'
import type { MixingTime } from './mixing-time.ts'
import type { Refused, Say } from './say.ts'
import type { DoseUnit, SealedDose, Working } from './sealed-dose.ts'

/** Kinds of remedy: a dose, or something done at the machine. */
export type RemedyCode =
  | 'acid' | 'alkali' | 'mildAcid' | 'sulfite' | 'constituent' | 'bleed' | 'water' | 'level' | 'replenishment' | 'speed' | 'cooling'
  | 'heating' | 'blend' | 'washFlow' | 'cellCurrent' | 'dryer' | 'hold' | 'replaceBath' | 'look' | 'own'

export interface PlannedDose {
  material: MaterialId | 'water'
  unit: DoseUnit
  /** 1 for the first portion of this exception. */
  portion: number
  /** The whole is given in parts; the next part follows from the re-check. */
  staged: boolean
  /** What keeps the portion below what was computed. */
  cappedBy?: 'safeSingleDose' | 'headroom' | 'mark'
  /** Cards to confirm before the amount can be read; empty where there is nothing to confirm. */
  needsCaution: readonly CardNeeded[]
  /** Cards to be shown beside the amount, those to confirm among them. */
  cards: readonly string[]
  /** `plan`: the plan asks for a check of the amount before it is poured. `scaledAboveOne`: offered only with two persons. */
  secondPerson: { required: boolean; offersScaledUp: boolean }
  /** Reading now, and expected after this portion with the response that this bath has shown. */
  predicted?: { quantity: string; from: number; to: number }
  /** So many re-checks tell the answer: two, while this bath has not answered the lot and one reading could not tell a wrong one. */
  rechecks: number
  /** The response used, and whether anything was learned. */
  response: { factor: number; learnedFrom: number }
  amount: SealedDose
}

/** Something set at the machine. Nothing hazardous hangs on these numbers, so they stand open. */
export interface Setting {
  quantity: 'speed' | 'flow' | 'current' | 'temperature' | 'humidity' | 'replenishment' | 'bleed' | 'volume' | 'ice' | 'hotWater' | 'coldWater' | 'time'
  /** Where, if not at the station of the exception. */
  at?: StationId
  from?: number
  to: number
  unit: string
  working?: Working
}

/**
 * One thing to do about an exception. It holds no amount of a hazardous material: that is sealed in `dose.amount`, which opens with the
 * caution's confirmation only.
 */
export interface Remedy {
  /** Stable while the exception stands: `acid:acetic-28`. */
  id: string
  code: RemedyCode
  exception?: EntryId
  station: StationId
  says: Say
  /** How it is done, in order: slowly at the return, exhaust on, … */
  how: readonly Say[]
  dose?: PlannedDose
  settings?: readonly Setting[]
  /** Done already for this portion; listed so that the order stays readable. */
  done?: boolean
  /** Wait before the re-check. */
  wait?: MixingTime
  /** Only with the supervisor's word. */
  approval?: 'supervisor'
  refused?: Refused
  /** What a number would need and the plan does not say. */
  lacks?: Say
  source: string
}
