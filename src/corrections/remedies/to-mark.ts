import type { ReadingCheck } from '../../plan/check.ts'
import type { Bath } from '../../plan/machine.ts'
import { bathTopUp } from '../../science/bath/top-up.ts'
import { worked, type Worked } from './act.ts'

const millimetres: Readonly<Record<string, number>> = { mm: 1, cm: 10 }

/** A level as a share of what the bath holds: read as such, in litres, or from its mark by the tank's surface. Undefined where the plan lets nobody know. */
const shareOf = ({ unit, limits }: ReadingCheck, { litres, surfaceSquareMetres }: Bath, level: number): number | undefined => {
  if (unit === '%') return level / 100
  if (unit === 'L') return level / litres
  const perUnit = millimetres[unit]
  // On a square metre a millimetre is a litre.
  return perUnit === undefined || surfaceSquareMetres === undefined ? undefined : 1 + ((level - limits.aim) * perUnit * surfaceSquareMetres) / litres
}

/** Litres from a level up to its mark, with their working. */
export const toMark = (check: ReadingCheck, bath: Bath, level: number): Worked<typeof bathTopUp.outputs> | undefined => {
  const levelFraction = shareOf(check, bath, level)
  const aimLevelFraction = shareOf(check, bath, check.limits.aim)
  return levelFraction === undefined || aimLevelFraction === undefined ? undefined : worked(bathTopUp, { litres: bath.litres, levelFraction, aimLevelFraction })
}
