import type { ReadingCheck } from '../plan/check.ts'
import { placeOf } from '../plan/find.ts'
import type { LabPlan, Method } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'
import { bathDrift } from '../science/bath/drift.ts'
import { bathReplenishRate } from '../science/bath/replenish-rate.ts'
import { resultOf } from '../science/evaluate.ts'
import { Refusal } from '../science/refusal.ts'
import { judge } from '../plan/limits.ts'
import type { LabState } from './lab-state.ts'
import { spanAt } from './machines.ts'

/** A constituent whose course over the coming film can be foretold: its analysis, its tank, and what film does to it. */
export interface DriftNow {
  check: ReadingCheck
  machine: Machine
  litres: number
  gramsPerLitre: number
  replenisherGramsPerLitre: number
  consumedGramsPerMetre: number
  /** The rate that was read last, by the metre at the speed of now; undefined where none was read. */
  millilitresPerMetre: number | undefined
  metresPerMinute: number
}

/** Every constituent for which the plan says how strong its replenisher is and what a metre of film takes out or gives off. */
export const driftsNow = (state: LabState, plan: LabPlan, now: number): DriftNow[] =>
  plan.methods.flatMap((method): DriftNow[] => {
    const given = givenOf(method)
    const check = given && plan.checks.find((it): it is ReadingCheck => it.kind === 'reading' && it.id === given.check)
    if (!given || !check) return []
    const { station, machine } = placeOf(plan, check.station)
    const value = lastValue(state, check, now)
    if (!station.bath || value === undefined) return []
    const rate = plan.checks.find((it): it is ReadingCheck => it.kind === 'reading' && it.quantity === 'replenishment' && placeOf(plan, it.station).machine.id === machine.id)
    const litresPerMinute = rate && lastValue(state, rate, now)
    const metresPerMinute = spanAt(state.machines[machine.id], now).metresPerMinute || machine.aimMetresPerMinute
    return [
      {
        check, machine, litres: station.bath.litres, gramsPerLitre: value, replenisherGramsPerLitre: given.replenisherGramsPerLitre, consumedGramsPerMetre: given.consumedGramsPerMetre,
        millilitresPerMetre: litresPerMinute === undefined ? undefined : (litresPerMinute * 1000) / metresPerMinute, metresPerMinute,
      },
    ]
  })

const givenOf = ({ calculation, given }: Method): { check: string; replenisherGramsPerLitre: number; consumedGramsPerMetre: number } | undefined => {
  const { check, replenisherGramsPerLitre, consumedGramsPerMetre } = given ?? {}
  return calculation === bathDrift.id && typeof check === 'string' && typeof replenisherGramsPerLitre === 'number' && typeof consumedGramsPerMetre === 'number'
    ? { check, replenisherGramsPerLitre, consumedGramsPerMetre }
    : undefined
}

const lastValue = (state: LabState, check: ReadingCheck, now: number): number | undefined => state.checks[check.id]?.recent.findLast(({ time, value }) => time <= now && value !== undefined)?.value

export interface Drifted {
  /** Strength along the coming film, from nothing run to all of it. */
  course: { metres: number; gramsPerLitre: number }[]
  /** Where it would settle; null where it would run out or go on rising. */
  steadyGramsPerLitre: number | null
  /** Film after which it meets a limit; absent where it does not, or stands beyond it already. */
  meets?: { limit: 'warning' | 'action'; at: number; metres: number }
  /** The rate that holds the aim; absent where this replenisher cannot hold it. */
  suggestedMillilitresPerMetre?: number
}

const courseSteps = 40

/** `density` of the film: how much more than the usual footage it takes out or gives off, 1 for the usual. */
export const driftOver = (drift: DriftNow, { metres, millilitresPerMetre, density }: { metres: number; millilitresPerMetre: number; density: number }): Drifted => {
  const tank = {
    litres: drift.litres, gramsPerLitre: drift.gramsPerLitre, replenisherGramsPerLitre: drift.replenisherGramsPerLitre, millilitresPerMetre, consumedGramsPerMetre: drift.consumedGramsPerMetre * density,
  }
  const { exhaustedAtMetres, steadyGramsPerLitre } = resultOf(bathDrift, { ...tank, metres: 0 })
  const end = exhaustedAtMetres === null ? metres : Math.min(metres, exhaustedAtMetres)
  const strengthAt = (at: number): number => resultOf(bathDrift, { ...tank, metres: at }).gramsPerLitre
  const course = Array.from({ length: courseSteps + 1 }, (_, index) => ({ metres: (end * index) / courseSteps, gramsPerLitre: strengthAt((end * index) / courseSteps) }))
  const suggested = suggestedRate(drift, density)
  const meets = meetingOf(drift, strengthAt, end)
  return { course, steadyGramsPerLitre, ...(meets ? { meets } : {}), ...(suggested === undefined ? {} : { suggestedMillilitresPerMetre: suggested }) }
}

const suggestedRate = ({ consumedGramsPerMetre, replenisherGramsPerLitre, check }: DriftNow, density: number): number | undefined => {
  try {
    return resultOf(bathReplenishRate, { consumedGramsPerMetre: consumedGramsPerMetre * density, replenisherGramsPerLitre, aimGramsPerLitre: check.limits.aim }).millilitresPerMetre
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined
    throw thrown
  }
}

const halvings = 40

/** The strength runs one way along the film, so the length at which it passes a limit is found by halving. */
const meetingOf = ({ check: { limits }, gramsPerLitre }: DriftNow, strengthAt: (metres: number) => number, end: number): Drifted['meets'] => {
  const last = strengthAt(end)
  const rises = last > gramsPerLitre
  const { verdict } = judge(limits, gramsPerLitre)
  const ahead = [['warning', rises ? limits.warningHigh : limits.warningLow], ['action', rises ? limits.actionHigh : limits.actionLow]] as const
  for (const [limit, at] of ahead) {
    if (at === undefined || verdict === 'ACT' || (rises ? gramsPerLitre > at || last < at : gramsPerLitre < at || last > at)) continue
    let [low, high] = [0, end]
    for (let step = 0; step < halvings; step++) {
      const middle = (low + high) / 2
      if (rises ? strengthAt(middle) < at : strengthAt(middle) > at) low = middle
      else high = middle
    }
    return { limit, at, metres: high }
  }
  return undefined
}
