import { bathReplenishRate } from '../../science/bath/replenish-rate.ts'
import { spanAt } from '../../projections/machines.ts'
import { givenFor, hasAll } from '../given-for.ts'
import { foundBy } from '../lookup.ts'
import type { Builder } from '../row.ts'
import { say } from '../say.ts'
import type { Situation } from '../situation.ts'
import { act, worked } from './act.ts'

const ratesOf = ({ plan, lab, machine, now }: Situation) =>
  plan.checks.flatMap((check) => {
    const isHere = check.kind === 'reading' && check.quantity === 'replenishment' && machine.stations.some(({ id }) => id === check.station)
    return isHere && check.kind === 'reading' ? [{ check, found: foundBy(lab, check, now) }] : []
  })

/**
 * The rate that would hold a constituent at its aim. The plan gives what film takes out (or gives off) by the metre and the strength of the
 * replenisher; without them the way is said and not the number.
 */
const rate =
  (way: 'raise' | 'cut'): Builder =>
  (situation, row) => {
    const { plan, lab, machine, now, check } = situation
    const given = givenFor(plan, bathReplenishRate.id)
    const [rateNow] = ratesOf(situation)
    const aim = check.kind === 'reading' ? check.limits.aim : undefined
    const metresPerMinute = spanAt(lab.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
    const made =
      aim !== undefined && hasAll(given, ['consumedGramsPerMetre', 'replenisherGramsPerLitre'])
        ? worked(bathReplenishRate, { consumedGramsPerMetre: given.consumedGramsPerMetre, replenisherGramsPerLitre: given.replenisherGramsPerLitre, aimGramsPerLitre: aim })
        : undefined
    const to = made && (made.result.millilitresPerMetre / 1000) * metresPerMinute
    return [
      act(situation, row, {
        code: 'replenishment',
        says: say(way === 'raise' ? 'raiseReplenisherRate' : 'cutReplenisherRate'),
        ...(made && to !== undefined
          ? { settings: [{ quantity: 'replenishment', ...(rateNow?.found ? { from: rateNow.found.value } : {}), to, unit: 'L/min', working: made.working }] }
          : { lacks: say('replenishDataNotInPlan') }),
      }),
    ]
  }

export const raiseReplenishment = rate('raise')
export const cutReplenishment = rate('cut')
