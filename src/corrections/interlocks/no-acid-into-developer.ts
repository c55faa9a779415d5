import { isDeveloper } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { isAcid, isAcidSalt } from '../nature.ts'
import { say } from '../say.ts'

/** No acid into any developer: its sulfite answers with sulfur dioxide, and the developer is dead. Boric acid or bicarbonate brings its pH down. */
export const noAcidIntoDeveloper: Interlock = ({ station, material }) =>
  isDeveloper(station) && (isAcid(material) || isAcidSalt(material))
    ? {
        code: 'noAcidIntoDeveloper',
        facts: { station: station.id },
        doFirst: say('useMildAcid'),
        source: 'sulfur dioxide from the sulfite: manual of a colour print process, 2006, supplier sheet of a developer replenisher; the mild remedies from memory',
      }
    : undefined
