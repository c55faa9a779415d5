import type { ReadingCheck } from '../plan/check.ts'
import { placeOf } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { resultOf } from '../science/evaluate.ts'
import { silverLoad } from '../science/silver/load.ts'
import { silverPlate } from '../science/silver/plate.ts'
import type { Machines } from './machines.ts'
import { metresRun } from './machines.ts'

const hour = 3_600_000
/** Longer than this without a reading of the current nothing is known of it, and nothing is counted. Common practice, no source. */
const mostHeldHours = 4

/** What only the laboratory knows of its cell and of the film's silver; read from the plan. */
export interface SilverData {
  efficiencyFraction: number
  cathodeSquareMetres: number
  fractionToFixer: number
  gramsPerSquareMetre: Readonly<Record<'negative' | 'positive', number>>
}

/** The plan's figures; undefined where one is lacking. */
export const silverDataOf = (plan: LabPlan): SilverData | undefined => {
  const given = plan.methods.find(({ calculation, given: it }) => calculation === silverPlate.id && it)?.given ?? {}
  const number = (name: string): number | undefined => (typeof given[name] === 'number' ? given[name] : undefined)
  const [efficiencyFraction, cathodeSquareMetres, fractionToFixer] = [number('efficiencyFraction'), number('cathodeSquareMetres'), number('fractionToFixer')]
  const [negative, positive] = [number('negativeGramsPerSquareMetre'), number('positiveGramsPerSquareMetre')]
  if (efficiencyFraction === undefined || cathodeSquareMetres === undefined || fractionToFixer === undefined || negative === undefined || positive === undefined) return undefined
  return { efficiencyFraction, cathodeSquareMetres, fractionToFixer, gramsPerSquareMetre: { negative, positive } }
}

/** The check that reads the current of the silver cell, and the one that weighs what is taken out of it. */
export const cellChecksOf = (plan: LabPlan): { current?: ReadingCheck; harvest?: ReadingCheck } => {
  const atCell = plan.checks.filter((it): it is ReadingCheck => it.kind === 'reading' && placeOf(plan, it.station).station.kind === 'silverCell')
  const current = atCell.find(({ quantity }) => quantity === 'current')
  const harvest = atCell.find(({ quantity }) => quantity === 'mass')
  return { ...(current ? { current } : {}), ...(harvest ? { harvest } : {}) }
}

export interface SilverYield {
  from: number
  to: number
  ampereHours: number
  /** Hours of the span in which the current is known. */
  knownHours: number
  platedGrams: number
  /** Brought to the fixing baths by the film that ran. */
  broughtGrams: number
  metres: number
}

interface YieldAsked {
  plan: LabPlan
  machines: Machines
  /** Readings of the current, oldest first. */
  currents: readonly { time: number; value: number }[]
  data: SilverData
  from: number
  to: number
}

/** Silver that the current plated and silver that film brought, over a span. Each reading of the current holds until the next. */
export const silverYield = ({ plan, machines, currents, data, from, to }: YieldAsked): SilverYield => {
  let [ampereHours, platedGrams, knownHours] = [0, 0, 0]
  currents.forEach(({ time, value }, index) => {
    const until = Math.min(currents[index + 1]?.time ?? to, time + mostHeldHours * hour, to)
    const hours = (until - Math.max(time, from)) / hour
    if (hours <= 0) return
    knownHours += hours
    ampereHours += value * hours
    platedGrams += resultOf(silverPlate, { amperes: value, hours, efficiencyFraction: data.efficiencyFraction }).grams
  })
  let [broughtGrams, metres] = [0, 0]
  for (const machine of plan.machines) {
    const run = metresRun(machines[machine.id], from, to)
    metres += run
    broughtGrams += resultOf(silverLoad, {
      gaugeMillimetres: machine.gaugeMillimetres, metres: run, gramsPerSquareMetre: data.gramsPerSquareMetre[machine.stock], fractionToFixer: data.fractionToFixer,
    }).grams
  }
  return { from, to, ampereHours, knownHours, platedGrams, broughtGrams, metres }
}
