import { isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { foundBy, isCurrent, readingsAt } from '../lookup.ts'
import { isAcid } from '../nature.ts'
import { say } from '../say.ts'
import { dosesInto } from '../situation.ts'

const source = 'Studio Light 1916; Crabtree and Hartt 1929: acid throws sulfur out of thiosulfate that sulfite does not guard'

/**
 * Acid into a fixing bath only while its sulfite has been found in limits within the interval of its check: without sulfite the acid
 * decomposes the thiosulfate, the bath clouds with sulfur for good and sulfur dioxide comes off.
 */
export const sulfiteInLimits: Interlock = ({ lab, plan, now, station, material }) => {
  if (!isFixing(station) || !isAcid(material)) return undefined
  const checks = readingsAt(plan, station.id, 'concentration', 'sodiumSulfite')
  if (!checks.length) return { code: 'noSulfiteCheck', facts: { station: station.id }, doFirst: say('addSulfiteCheckToPlan', { station: station.id }), source }
  for (const check of checks) {
    const found = foundBy(lab, check, now)
    const facts = { check: check.id, ...(found ? { found: found.value, unit: check.unit, foundAt: found.mark.time } : {}) }
    if (!found) return { code: 'sulfiteNeverFound', facts, doFirst: say('titrateSulfite', { check: check.id }), source }
    if (found.judged.verdict !== 'IN') return { code: 'sulfiteNotInLimits', facts, doFirst: say('bringSulfiteIntoLimits', { check: check.id }), source }
    const isSpent = dosesInto(lab, station.id).some(({ time, isOver, material: id }) => isOver && time > found.mark.time && isAcid(plan.materials.find((it) => it.id === id) ?? 'water'))
    if (isSpent || !isCurrent(lab, plan, check, found.mark, now)) return { code: 'sulfiteTooOld', facts, doFirst: say('titrateSulfite', { check: check.id }), source }
  }
  return undefined
}
