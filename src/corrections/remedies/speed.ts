import { developSpeed } from '../../science/develop/speed.ts'
import type { ReadingCheck } from '../../plan/check.ts'
import { spanAt } from '../../projections/machines.ts'
import { isDeveloper } from '../bath-now.ts'
import { givenFor, hasAll } from '../given-for.ts'
import { foundBy, isCurrent, lastMark } from '../lookup.ts'
import type { Setting } from '../remedy.ts'
import type { Builder } from '../row.ts'
import { say, type Refused } from '../say.ts'
import type { Situation } from '../situation.ts'
import { stripFigure } from '../strip-sides.ts'
import { act, worked } from './act.ts'

/** A change of speed beyond this hides a fault instead of mending it. Common practice, no source. */
const mostShare = 0.1

/**
 * Machine speed from the strip's gamma: the last thing to be touched, when temperature and chemistry of the developer stand in their limits, and only
 * with the supervisor's word, since fixing, washing and drying are timed by the same speed.
 */
export const speedFromGamma: Builder = (situation, row) => {
  const { machine, lab, now, plan, known } = situation
  const gamma = stripFigure(situation, 'gamma')
  const developer = machine.stations.filter(isDeveloper)
  const pathMetres = developer.reduce((sum, station) => sum + (station.pathMetres ?? 0), 0)
  if (!gamma || !developer.length || pathMetres === 0) return []
  const remedy = act(situation, row, { code: 'speed', says: say('speedFromGamma'), how: [say('onlyAfterTemperatureAndChemistry'), say('tellWhoLoads')], approval: 'supervisor' })
  const refused = chemistryFirst(situation)
  if (refused) return [{ ...remedy, refused }]
  const given = known.developLaw ?? (situation.check.kind === 'strip' ? situation.check.law : undefined) ?? givenFor(plan, developSpeed.id) ?? givenFor(plan, 'develop.time')
  if (!hasAll(given, ['gammaInfinity', 'ratePerMinute'])) return [{ ...remedy, lacks: say('timeGammaLawUnknown') }]
  const metresPerMinute = spanAt(lab.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
  const made = worked(developSpeed, {
    pathMetres, metresPerMinute, gammaInfinity: given.gammaInfinity, ratePerMinute: given.ratePerMinute, measuredGamma: gamma.value, aimGamma: gamma.aim,
  })
  if (!made) return [{ ...remedy, lacks: say('gammaOffTheCurve') }]
  const to = made.result.metresPerMinute
  if (Math.abs(to / metresPerMinute - 1) > mostShare)
    return [{ ...remedy, refused: { code: 'speedChangeTooLarge', facts: { mostShare, from: metresPerMinute, to }, doFirst: say('lookForTheFault'), source: 'common practice, no source' } }]
  const times: Setting[] = machine.stations.flatMap(({ id, kind, pathMetres: path }) =>
    path !== undefined && ['developer', 'fixing', 'wash', 'dryer'].includes(kind) ? [{ quantity: 'time' as const, at: id, from: path / metresPerMinute, to: path / to, unit: 'min' }] : [],
  )
  return [{ ...remedy, settings: [{ quantity: 'speed', from: metresPerMinute, to, unit: 'm/min', working: made.working }, ...times] }]
}

const source = 'US Navy Photography (Advanced) ch. 2: temperature, agitation, time, then chemistry, one cause at a time'

/** Temperature, pH, bromide and the rest of the developer out, or open; temperature and pH not read within their interval: those first, one cause at a time. */
const chemistryFirst = ({ plan, lab, machine, now }: Situation): Refused | undefined => {
  const developers = new Set(machine.stations.filter(isDeveloper).map(({ id }) => id))
  const readings = plan.checks.filter((check): check is ReadingCheck => check.kind === 'reading' && developers.has(check.station))
  const culprit = readings.find((check) => lab.exceptions.open[check.id] !== undefined || (foundBy(lab, check, now)?.judged.verdict ?? 'IN') !== 'IN')
  if (culprit) return { code: 'temperatureAndChemistryFirst', facts: { check: culprit.id }, doFirst: say('bringIntoLimits', { check: culprit.id }), source }
  const isFresh = (check: ReadingCheck): boolean => {
    const mark = lastMark(lab, check, now)
    return mark !== undefined && isCurrent(lab, plan, check, mark, now)
  }
  const unread = (['temperature', 'pH'] as const)
    .map((quantity) => readings.filter((check) => check.quantity === quantity))
    .find((checks) => checks.length && !checks.some(isFresh))?.[0]
  return unread && { code: 'temperatureAndChemistryFirst', facts: { check: unread.id }, doFirst: say('readFirst', { check: unread.id }), source }
}
