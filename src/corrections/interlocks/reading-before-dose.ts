import { phaseAt, rechecksLeft } from '../../projections/exceptions.ts'
import type { Interlock } from '../interlock.ts'
import { say } from '../say.ts'
import { dosesInto } from '../situation.ts'

const source = 'mix, then read, then dose again: common practice, no source'

/**
 * A dose is worked out from a reading that speaks for the bath as it is: confirmed by a repeat, and taken after everything that was put in
 * has mixed. The other materials of the same portion may follow one another, since they were all worked out from the one analysis.
 */
export const readingBeforeDose: Interlock = ({ lab, now, station, exception, mark, material }) => {
  if (exception?.state === 'toConfirm') return { code: 'notYetConfirmed', facts: { check: exception.check }, doFirst: say('repeatReading', { check: exception.check }), source }
  const since = dosesInto(lab, station.id).filter((dose) => mark === undefined || dose.mixUntil > mark.time)
  const own = material === 'water' ? 'water' : material.id
  const foreign = since.filter((dose) => dose.exception !== exception?.id || dose.material === own)
  const last = foreign.at(-1) ?? (exception && rechecksLeft(exception) > 0 ? exception.doses.findLast((dose) => dose.material === own) : undefined)
  if (!last) return undefined
  return now < last.mixUntil
    ? { code: 'stillMixing', facts: { until: last.mixUntil, material: last.material }, doFirst: say('waitForMixing', { until: last.mixUntil }), source }
    : { code: 'readAgainFirst', facts: { material: last.material, ...(exception ? { phase: phaseAt(exception, now) } : {}) }, doFirst: say('recheck', exception ? { check: exception.check } : {}), source }
}
