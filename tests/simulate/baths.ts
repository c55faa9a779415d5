import type { MaterialId } from '../../src/plan/ids.ts'
import { rechecksLeft } from '../../src/projections/exceptions.ts'
import { responseOf, unexplained } from '../../src/corrections/response.ts'
import { acidBaseDose } from '../../src/science/acidBase/dose.ts'
import { gramsPerUnit } from '../../src/corrections/remedies/mass-balance.ts'
import { reagentOf } from '../../src/corrections/remedies/ph.ts'
import { resultOf } from '../../src/science/evaluate.ts'
import { Bench } from '../corrections/kit.ts'

/** A sequence of numbers from a seed (mulberry32): the same shift again whenever the seed is the same. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

const normal = (random: () => number): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

/** A tank of the demo laboratory that goes out on the high side of its pH, and what brings it back. */
export interface Tank {
  name: string
  check: string
  remedy: string
  material: string
  celsius: { check: string; value: number }
  /** Down to here the chemistry is tabulated. */
  pH: { low: number }
  aim: number
  /** Where it is found: beyond the action limit, short of what ends the bath. */
  startsAt: { from: number; to: number }
  /** Beyond this side nothing brings it back: sulfur in the fixing bath, a dead developer. */
  ruinedBelow: number
  warningLow: number
  levelCheck: string
}

export const tanks: readonly Tank[] = [
  {
    name: 'fixing bath, acid', check: 'neg-1-fix-ph', remedy: 'acid:acetic-acid-28', material: 'acetic-acid-28', celsius: { check: 'neg-1-fix-temp', value: 21 },
    pH: { low: 3.88 }, aim: 4.5, startsAt: { from: 4.83, to: 5.1 }, ruinedBelow: 3.9, warningLow: 4.2, levelCheck: 'neg-1-fix-level',
  },
  {
    name: 'borax developer, boric acid', check: 'neg-1-dev-ph', remedy: 'mildAcid:boric-acid', material: 'boric-acid', celsius: { check: 'neg-1-dev-temp', value: 21 },
    pH: { low: 8.2 }, aim: 8.6, startsAt: { from: 8.66, to: 8.8 }, ruinedBelow: 8.4, warningLow: 8.57, levelCheck: 'neg-1-dev-level',
  },
]

/** How a bath that stands at a pH goes down with what is poured: the engine's own chemistry from there, as a table. What a real bath does otherwise is its hidden response. */
const courseFrom = (bench: Bench, tank: Tank, { start, earlier }: { start: number; earlier: number }): ((amount: number) => number) => {
  const steps = 14
  const pH = Array.from({ length: steps + 1 }, (_, step) => start - (step / steps) * (start - tank.pH.low))
  const amount = pH.map((aimPh, step) => (step === 0 ? 0 : dose(bench, tank, { measuredPh: start, aimPh, earlier })))
  return (poured) => interpolated(amount, pH, poured)
}

/** What the engine says brings a tank from one pH to another, at a response of 1; what went in earlier is in there still. */
const dose = (bench: Bench, tank: Tank, { measuredPh, aimPh, earlier = 0 }: { measuredPh: number; aimPh: number; earlier?: number }): number => {
  const { station: at } = bench.plan.checks.find(({ id }) => id === tank.check)!
  const station = bench.plan.machines.flatMap(({ stations }) => stations).find(({ id }) => id === at)!
  const material = bench.plan.materials.find(({ id }) => id === tank.material)!
  const { litres, constituents } = station.bath!
  const grams = (earlier * gramsPerUnit(material, 'anhydrous')) / litres
  const bath = constituents.map((it) => ({ ...it, gramsPerLitre: it.gramsPerLitre + (it.substance === material.substance ? grams : 0) }))
  if (!bath.some(({ substance }) => substance === material.substance)) bath.push({ substance: material.substance, gramsPerLitre: grams })
  return resultOf(acidBaseDose, { celsius: tank.celsius.value, litres, bath: bath as never, measuredPh, aimPh, reagent: reagentOf(material) }).amount
}

const interpolated = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const found = xs.findIndex((it) => it >= x)
  const upper = found === -1 ? xs.length - 1 : Math.max(1, found)
  const [x0, x1, y0, y1] = [xs[upper - 1]!, xs[upper]!, ys[upper - 1]!, ys[upper]!]
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}

/** What is in the drum: what the label says, or not. */
export type Lot = 'right' | 'halfStrength' | 'doubleStrength' | 'water'
const strengths: Readonly<Record<Lot, number>> = { right: 1, halfStrength: 0.5, doubleStrength: 2, water: 0.05 }

export type Policy = 'stagedAndLearned' | 'singleFullDoses'

export interface Excursion {
  /** Portions until the reading was in limits; undefined when it was not reached. */
  portions: number | undefined
  stopped: boolean
  /** True pH, at its lowest, below the aim; 0 where it never went past it. */
  overshoot: number
  leftLimitsBelow: boolean
  ruined: boolean
  /** True distance from the aim at the end. */
  offAim: number
}

export interface Run {
  seed: number
  lot: Lot
  excursions: readonly Excursion[]
  /** The factor in use at the end. */
  factor: number
  /** The flow was stopped, or the next dose of the lot would be. */
  stopped: boolean
}

const mostPortions = 6

/** One shift at one tank: it drifts out three times, and each time is brought back by the policy. */
export const shift = (tank: Tank, policy: Policy, seed: number, lot: Lot = 'right', times = 3): Run => {
  const random = seeded(seed)
  const bench = new Bench((plan) => {
    // Portions are to be judged here, not what the plan allows at once.
    for (const material of plan.materials) if (material.id === tank.material) material.safeSingleDosePerLitre = 1000
  })
  // What this bath does against what the model says: its own composition, volume and wear. Within what a right lot can show.
  const response = Math.min(1.28, Math.max(0.78, Math.exp(0.12 * normal(random)))) * strengths[lot]
  const phPerHour = 0.01 + 0.02 * random()
  const read = (pH: number): number => Math.round((pH + 0.01 * normal(random)) * 100) / 100
  const ready = (): void => {
    if (tank.check.includes('fix')) bench.safe({ celsius: tank.celsius.value })
    else bench.read(tank.celsius.check, tank.celsius.value)
    bench.read(tank.levelCheck, 0)
  }
  const excursions: Excursion[] = []
  let earlier = 0
  for (let time = 0; time < times; time++) {
    bench.wait(240)
    let pH = tank.startsAt.from + (tank.startsAt.to - tank.startsAt.from) * random()
    let lowest = pH
    const course = courseFrom(bench, tank, { start: pH, earlier })
    let inBath = 0
    let drifted = 0
    const pour = (amount: number): void => {
      inBath += amount * (1 + 0.01 * normal(random)) * response
      pH = course(inBath) + drifted
    }
    ready()
    // The start lies beyond the action limit; a meter that happens to read it inside is simply read again.
    let exception = bench.read(tank.check, Math.max(read(pH), Math.ceil(tank.startsAt.from * 100) / 100))
    bench.wait(2)
    bench.read(tank.check, Math.max(read(pH), Math.ceil(tank.startsAt.from * 100) / 100))
    exception = bench.state.exceptions.open[tank.check as never] ?? exception
    let portions = 0
    let stopped = false
    const isOpen = (): boolean => bench.state.exceptions.all[exception]!.state !== 'closed'
    while (isOpen() && portions < mostPortions) {
      ready()
      let minutes: number
      if (policy === 'stagedAndLearned') {
        const remedy = bench.remedies(exception).find(({ id }) => id === tank.remedy)
        if (!remedy || remedy.refused) {
          stopped = remedy?.refused?.code === 'answerOutOfBounds'
          break
        }
        pour(bench.pour(remedy, { lot: 'A1' }).amount)
        minutes = remedy.wait!.seconds / 60
      } else {
        const found = bench.state.exceptions.all[exception]!.marks.at(-1)!.value!
        if (found <= tank.aim) break
        pour(dose(bench, tank, { measuredPh: found, aimPh: tank.aim }))
        minutes = 20
        bench.wait(minutes)
      }
      portions++
      lowest = Math.min(lowest, pH)
      drifted += (phPerHour * minutes) / 60
      pH = course(inBath) + drifted
      bench.read(tank.check, read(pH))
      while (rechecksLeft(bench.state.exceptions.all[exception]!) > 0) bench.wait(2).read(tank.check, read(pH))
    }
    earlier += inBath
    excursions.push({
      portions: isOpen() ? undefined : portions,
      stopped,
      overshoot: Math.max(0, tank.aim - lowest),
      leftLimitsBelow: lowest < tank.warningLow,
      ruined: lowest < tank.ruinedBelow,
      offAim: Math.abs(pH - tank.aim),
    })
    if (isOpen()) bench.enter('close', { exception, reason: 'other' })
  }
  const asked = { station: bench.plan.checks.find(({ id }) => id === tank.check)!.station, material: tank.material as MaterialId, now: bench.now }
  return {
    seed, lot, excursions, factor: responseOf(bench.state, bench.plan, asked).factor,
    stopped: excursions.some((it) => it.stopped) || unexplained(bench.state, bench.plan, asked) !== undefined,
  }
}

export interface Summary {
  runs: number
  /** Share of runs in which every excursion was back in limits within three portions. */
  withinThree: number
  meanPortions: number
  /** Share of excursions whose true pH went below the warning limit on the other side. */
  leftLimitsBelow: number
  ruined: number
  meanOvershoot: number
  meanOffAim: number
  /** Share of runs in which the flow was stopped, or the next dose would have been. */
  stopped: number
  /** Share of runs that learned something and go on by it: the factor is not 1, and nothing stops the flow. */
  learned: number
}

const mean = (values: readonly number[]): number => (values.length ? values.reduce((sum, it) => sum + it, 0) / values.length : Number.NaN)
const share = <T>(values: readonly T[], is: (value: T) => boolean): number => mean(values.map((value) => (is(value) ? 1 : 0)))

export const summary = (runs: readonly Run[]): Summary => {
  const all = runs.flatMap(({ excursions }) => excursions)
  return {
    runs: runs.length,
    withinThree: share(runs, ({ excursions }) => excursions.every(({ portions }) => portions !== undefined && portions <= 3)),
    meanPortions: mean(all.flatMap(({ portions }) => (portions === undefined ? [] : [portions]))),
    leftLimitsBelow: share(all, (it) => it.leftLimitsBelow),
    ruined: share(all, (it) => it.ruined),
    meanOvershoot: mean(all.map(({ overshoot }) => overshoot)),
    meanOffAim: mean(all.map(({ offAim }) => offAim)),
    stopped: share(runs, ({ stopped }) => stopped),
    learned: share(runs, ({ factor, stopped }) => factor !== 1 && !stopped),
  }
}

export const shifts = (tank: Tank, policy: Policy, { runs, lot = 'right', from = 1 }: { runs: number; lot?: Lot; from?: number }): Run[] =>
  Array.from({ length: runs }, (_, index) => shift(tank, policy, from + index, lot))
