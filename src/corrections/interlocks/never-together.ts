import { mayMeet } from '../../safety/pairs.ts'
import { thingsOf } from '../../safety/things.ts'
import { thingsIn } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'

/** Materials that must never meet: what is in the jug against what is in the tank. */
export const neverTogether: Interlock = ({ station, material }) => {
  if (material === 'water') return undefined
  const meeting = mayMeet(thingsOf(material.substance, material.strength), thingsIn(station))
  return meeting.may === 'never'
    ? { code: 'neverTogether', facts: { material: material.id, station: station.id, a: meeting.a, b: meeting.b, result: meeting.result }, doFirst: say('doNotPour'), source: meeting.source }
    : undefined
}
