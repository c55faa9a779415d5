import { isFixing } from '../bath-now.ts'
import type { Interlock } from '../interlock.ts'
import { readingsAt } from '../lookup.ts'
import { isAcid } from '../nature.ts'
import { say } from '../say.ts'

/**
 * Sulfite and acid both out: sulfite first, mixed and found in limits; it moves the pH, so the acid is then worked out anew from a new reading.
 * That the sulfite reading itself is in limits is the concern of `sulfiteInLimits`; this one keeps the order while the exception stands.
 */
export const sulfiteFirst: Interlock = ({ lab, plan, station, material }) => {
  if (!isFixing(station) || !isAcid(material)) return undefined
  const open = readingsAt(plan, station.id, 'concentration', 'sodiumSulfite').find(({ id }) => lab.exceptions.open[id])
  return open
    ? {
        code: 'sulfiteFirst',
        facts: { check: open.id },
        doFirst: say('addSulfiteThenReadAnew', { check: open.id }),
        source: 'sulfite guards the thiosulfate: Studio Light 1916; that it moves the pH: from memory',
      }
    : undefined
}
