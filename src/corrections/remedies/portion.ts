import type { Material } from '../../plan/material.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { headroomLeftLitres, safeSingleDose, sameUnit } from '../dose-limits.ts'
import type { DoseAsked } from '../interlock.ts'
import type { DoseInside } from '../sealed-dose.ts'

/** The most that may go in at once, in the material's unit. */
export interface PortionLimits {
  single: number
  room: number
}

export const portionLimits = (asked: DoseAsked, material: Material): PortionLimits => ({
  single: safeSingleDose(material, asked.bath) ?? Number.POSITIVE_INFINITY,
  room: material.unit === 'mL' ? headroomLeftLitres(asked) * 1000 : Number.POSITIVE_INFINITY,
})

/** As they are kept with a dose: what does not bound it is not said. */
export const finite = ({ single, room }: PortionLimits): NonNullable<DoseInside['limits']> => ({
  ...(Number.isFinite(single) ? { single } : {}), ...(Number.isFinite(room) ? { room } : {}),
})

export interface Portion {
  amount: number
  /** What is left to give in all, as far as is known now. */
  whole: number
  cappedBy?: 'safeSingleDose' | 'headroom'
}

/**
 * The size of a portion. The first is the share that the calculation allows before a new reading (half of an acid or a hydroxide); a later one
 * may be the whole of what is left, but no more than the larger of that share and the largest portion that this bath has taken for this exception.
 * "Half, re-check, then the rest": common practice, no source. A bath that answered outside the bounds gets no further portion at all.
 */
export const sized = (
  { whole, firstShare }: { whole: number; firstShare: number },
  factor: number,
  { single, room }: PortionLimits,
  { portion, taken }: { portion: number; taken: number },
): Portion => {
  const all = whole / factor
  const share = all * firstShare
  const wanted = portion === 1 ? share : Math.min(all, Math.max(share, taken))
  const amount = Math.min(wanted, single, room)
  return amount === wanted ? { amount, whole: all } : { amount, whole: all, cappedBy: single <= room ? 'safeSingleDose' : 'headroom' }
}

/** The largest portion of a material that was poured and read again for this exception, in the material's unit. */
export const largestTaken = ({ doses, marks }: Exception, material: Material): number =>
  Math.max(
    0,
    ...doses
      .filter((dose) => dose.material === material.id && marks.some(({ time }) => time >= dose.mixUntil))
      .map(({ poured }) => sameUnit(poured, material.unit)),
  )
