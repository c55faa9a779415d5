import { above } from '../../science/decimal.ts'
import { safeSingleDose, sameUnit } from '../dose-limits.ts'
import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/** Never more at once than the plan's safe single dose. */
export const withinSafeSingleDose: Interlock = ({ bath, material, amount }) => {
  if (!amount || material === 'water') return undefined
  const most = safeSingleDose(material, bath)
  return most !== undefined && above(sameUnit(amount, material.unit), most)
    ? { code: 'aboveSafeSingleDose', facts: { material: material.id, perLitre: material.safeSingleDosePerLitre!, unit: material.unit }, doFirst: say('doseInPortions'), source: 'the laboratory’s plan' }
    : undefined
}
