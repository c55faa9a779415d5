import { above } from '../../science/decimal.ts'
import { headroomLeftLitres, litresOf } from '../dose-limits.ts'
import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/** Never more than the tank takes below its overflow lip. Solids go in dissolved in bath that was drawn off, and take no room. */
export const roomInTank: Interlock = (asked) => {
  const { material, amount, bath } = asked
  const isLiquid = amount ? litresOf(amount) > 0 : material === 'water' || material.unit === 'mL'
  if (!isLiquid) return undefined
  const left = headroomLeftLitres(asked)
  return left <= 0 || (amount && above(litresOf(amount), left))
    ? { code: 'noHeadroom', facts: { litresLeft: left, headroomLitres: bath.headroomLitres }, doFirst: say('drawOffFirst'), source: 'common practice, no source' }
    : undefined
}
