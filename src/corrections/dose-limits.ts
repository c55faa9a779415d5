import type { Bath } from '../plan/machine.ts'
import type { Material } from '../plan/material.ts'
import { tidy } from '../science/decimal.ts'
import type { DoseAsked } from './interlock.ts'
import { foundBy, readingsAt } from './lookup.ts'
import { dosesInto } from './situation.ts'

interface Amount {
  amount: number
  unit: 'mL' | 'L' | 'g' | 'kg'
}

/** Volume that a dose adds to the bath; solids are dissolved outside in bath drawn off, so that they add next to none. */
export const litresOf = ({ amount, unit }: Amount): number => (unit === 'L' ? amount : unit === 'mL' ? amount / 1000 : 0)

export const sameUnit = ({ amount, unit }: Amount, wanted: 'mL' | 'g'): number => {
  const thousands = unit === 'L' || unit === 'kg' ? 1000 : 1
  const isVolume = unit === 'L' || unit === 'mL'
  if (isVolume !== (wanted === 'mL')) throw new Error(`${unit} is no amount of a material kept in ${wanted}`)
  return amount * thousands
}

/** Without a level reading, what was poured in this long is taken to be in the tank still. Common practice, no source. */
export const staysMilliseconds = 24 * 3_600_000

/**
 * Room below the overflow lip: the plan's headroom less what was poured since the level was last found not high. Without a level check, less what
 * was poured in the last day; carry-out and evaporation are not counted, which errs to the safe side.
 */
export const headroomLeftLitres = ({ lab, plan, station, bath, now }: Pick<DoseAsked, 'lab' | 'plan' | 'station' | 'bath' | 'now'>): number => {
  const levelled = readingsAt(plan, station.id, 'level')
    .map((check) => foundBy(lab, check, now))
    .find((found) => found && (found.judged.verdict === 'IN' || found.judged.side === 'low'))
  const since = levelled?.mark.time ?? now - staysMilliseconds
  const poured = dosesInto(lab, station.id).filter(({ time }) => time >= since)
  return Math.max(0, tidy(bath.headroomLitres - poured.reduce((sum, dose) => sum + litresOf(dose.poured), 0)))
}

/** The most of a material for one dose into this bath, in the material's unit. */
export const safeSingleDose = (material: Material, bath: Bath): number | undefined =>
  material.safeSingleDosePerLitre === undefined ? undefined : material.safeSingleDosePerLitre * bath.litres
