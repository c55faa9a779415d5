import { thingsOf } from '../../safety/things.ts'
import { isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { foundBy, isCurrent, readingsAt } from '../lookup.ts'
import { say } from '../say.ts'

const source = 'alum on sulfite without acid gives a sludge that hardly redissolves: Studio Light 1916 and 1918; Crabtree and Hartt 1929'

/** Alum only into a bath whose acid is in: its pH found in limits, within the interval. */
export const alumAfterAcid: Interlock = ({ lab, plan, now, station, material }) => {
  if (material === 'water' || !isFixing(station) || !thingsOf(material.substance).includes('alum')) return undefined
  const [check] = readingsAt(plan, station.id, 'pH')
  const found = check && foundBy(lab, check, now)
  const right = check && found && found.judged.verdict === 'IN' && isCurrent(lab, plan, check, found.mark, now)
  return right
    ? undefined
    : { code: 'acidBeforeAlum', facts: { station: station.id, ...(found ? { pH: found.value } : {}) }, doFirst: say('bringPhIntoLimits', check ? { check: check.id } : {}), source }
}
