import type { Material } from '../../plan/material.ts'
import type { EntryId } from '../../record/ids.ts'
import type { Answer } from '../answers.ts'
import { headroomLeftLitres, safeSingleDose } from '../dose-limits.ts'
import type { DoseAsked } from '../interlock.ts'

/** The most that may go in at once, in the material's unit. */
export interface PortionLimits {
  single: number
  room: number
}

export const portionLimits = (asked: DoseAsked, material: Material): PortionLimits => ({
  single: safeSingleDose(material, asked.bath) ?? Number.POSITIVE_INFINITY,
  room: material.unit === 'mL' ? headroomLeftLitres(asked) * 1000 : Number.POSITIVE_INFINITY,
})

export interface Portion {
  amount: number
  /** What is left to give in all, as far as is known now. */
  whole: number
  cappedBy?: 'safeSingleDose' | 'headroom'
}

/**
 * The size of a portion. The first is the share that the calculation allows before a new reading (half of an acid or a hydroxide); a later one
 * may be the whole of what is left, but no more than the larger of that share and the largest portion that this bath has answered as it should.
 * "Half, re-check, then the rest": common practice, no source.
 */
export const sized = (
  { whole, firstShare }: { whole: number; firstShare: number },
  factor: number,
  { single, room }: PortionLimits,
  { portion, answered }: { portion: number; answered: number },
): Portion => {
  const all = whole / factor
  const share = all * firstShare
  const wanted = portion === 1 ? share : Math.min(all, Math.max(share, answered))
  const amount = Math.min(wanted, single, room)
  return amount === wanted ? { amount, whole: all } : { amount, whole: all, cappedBy: single <= room ? 'safeSingleDose' : 'headroom' }
}

/** The largest portion of this exception that was answered within bounds. */
export const largestAnswered = (history: readonly Answer[], exception: EntryId): number =>
  Math.max(0, ...history.filter((it) => it.exception === exception && it.kind === 'learned').map(({ poured }) => poured))
