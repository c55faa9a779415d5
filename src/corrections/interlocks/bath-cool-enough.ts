import { above } from '../../science/decimal.ts'
import { isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { foundBy, isCurrent, readingsAt } from '../lookup.ts'
import { isAcid } from '../nature.ts'
import { say } from '../say.ts'

/** Above this a fixing bath sulfurises with acid. From memory. */
export const hottestCelsiusForAcid = 27

const source = 'heat throws sulfur out of an acid fixing bath: Crabtree and Hartt 1929, Studio Light 1916; the 27 °C from memory'

/** No acid into a fixing bath that is hot, or of which nobody knows how hot it is. */
export const bathCoolEnough: Interlock = ({ lab, plan, now, station, material }) => {
  if (!isFixing(station) || !isAcid(material)) return undefined
  const [check] = readingsAt(plan, station.id, 'temperature').filter(({ unit }) => unit === '°C')
  const found = check && foundBy(lab, check, now)
  if (!check || !found || !isCurrent(lab, plan, check, found.mark, now))
    return { code: 'bathTemperatureNotKnown', facts: { station: station.id }, doFirst: say('readBathTemperature', check ? { check: check.id } : {}), source }
  return above(found.value, hottestCelsiusForAcid)
    ? { code: 'bathTooHotForAcid', facts: { celsius: found.value, mostCelsius: hottestCelsiusForAcid, check: check.id }, doFirst: say('coolBath', { toCelsius: hottestCelsiusForAcid }), source }
    : undefined
}
