import { hasAlum, isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { isAlkali } from '../nature.ts'
import { say } from '../say.ts'

/** No hydroxide or carbonate into a fixing bath with alum: the aluminium comes down as a white sludge that settles on the film. */
export const noAlkaliIntoAlum: Interlock = ({ station, material }) =>
  isFixing(station) && hasAlum(station) && isAlkali(material)
    ? { code: 'noAlkaliIntoAlum', facts: { station: station.id }, doFirst: say('useSulfiteSolution'), source: 'Crabtree and Hartt 1929 p. 401; Studio Light 1916' }
    : undefined
