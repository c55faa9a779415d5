import { above, below, same, tidy } from '../decimal.ts'
import type { Fields } from '../field.ts'
import { noAnswer } from '../refusal.ts'

/** A strip in order of exposure. `rising` is `density` with its small folds evened out, the base of everything read off the curve. */
export interface Characteristic {
  logExposure: number[]
  density: number[]
  rising: number[]
  baseFog: number
  flags: StripFlag[]
}

export const stripFlags = ['uneven', 'noToe', 'noSpeedPoint', 'endsBeforeGradient', 'straightToEnd'] as const
export type StripFlag = (typeof stripFlags)[number]

const leastRange = 0.2 // twice the rise that marks the speed point
const leastSpan = 0.9 // log exposure; six steps of half a stop
const unevenBy = 0.02 // two readings' worth of densitometer noise
const brokenBy = 0.05 // more than noise of 0.01 makes: a step misread, changed places, or solarised

export const densityFields = {
  density: {
    kind: 'list',
    says: 'density of each step, in the same order',
    atLeast: 5,
    atMost: 500,
    of: { kind: 'number', unit: '1', says: 'density', atLeast: -0.1, atMost: 6 },
  },
  baseFog: {
    kind: 'number',
    unit: '1',
    says: 'base + fog, read on unexposed film; without it the first steps of the strip are taken',
    atLeast: 0,
    atMost: 2,
    optional: true,
  },
} as const satisfies Fields

/**
 * Puts a strip in order of exposure and refuses what is no characteristic curve: falling with exposure (reversed, or reversal
 * stock), too flat, too short, or with a step that stands against its neighbours by more than noise can.
 *
 * Folds within noise are evened out by pooling neighbours (isotonic regression, Ayer et al. 1955), which leaves a strip that
 * already rises as it was read. `exposureField` names the input for refusals.
 */
export const characteristicOf = (
  exposureField: string,
  given: { logExposure: readonly number[]; density: readonly number[]; baseFog?: number | undefined },
): Characteristic => {
  if (given.density.length !== given.logExposure.length)
    throw noAnswer('density', given.density, `a density for each of the ${given.logExposure.length} exposures, not ${given.density.length}`)
  const steps = given.logExposure.map((x, index) => ({ x, y: given.density[index]!, index })).sort((a, b) => a.x - b.x)
  steps.forEach((step, index) => {
    const before = steps[index - 1]
    if (before && same(before.x, step.x)) throw noAnswer(`${exposureField}[${step.index}]`, step.x, 'each exposure once')
  })
  const logExposure = steps.map((step) => step.x)
  const density = steps.map((step) => step.y)
  if (below(logExposure.at(-1)! - logExposure[0]!, leastSpan))
    throw noAnswer(exposureField, given.logExposure, `exposures that span ${leastSpan} log exposure or more`)
  if (below(density.at(-1)!, density[0]! - unevenBy))
    throw noAnswer('density', given.density, 'densities that rise with exposure: these fall, so the strip is reversed or on reversal stock')

  const rising = pooled(density)
  if (below(rising.at(-1)! - rising[0]!, leastRange))
    throw noAnswer('density', given.density, `densities that rise by ${leastRange} or more: this strip is flat`)
  const folds = density.map((reading, index) => Math.abs(reading - rising[index]!))
  const worst = folds.indexOf(Math.max(...folds))
  if (above(folds[worst]!, brokenBy)) {
    const { index, y } = steps[worst]!
    throw noAnswer(`density[${index}]`, y, `a density in line with its neighbours, about ${tidy(Math.round(rising[worst]! * 100) / 100)}: read this step again`)
  }

  const baseFog = given.baseFog ?? rising[0]!
  if (above(baseFog, rising[0]! + brokenBy)) throw noAnswer('baseFog', baseFog, `a base + fog that is not above the strip’s thinnest step, ${tidy(rising[0]!)}`)
  const flags: StripFlag[] = []
  if (above(folds[worst]!, unevenBy)) flags.push('uneven')
  if (given.baseFog === undefined && above(rising[1]! - rising[0]!, unevenBy)) flags.push('noToe')
  return { logExposure, density, rising, baseFog, flags }
}

/** Neighbours that fall are replaced by their mean until nothing falls. */
const pooled = (density: readonly number[]): number[] => {
  const blocks: { mean: number; count: number }[] = []
  for (const reading of density) {
    let block = { mean: reading, count: 1 }
    for (let before = blocks.at(-1); before && before.mean > block.mean; before = blocks.at(-1)) {
      blocks.pop()
      const count = before.count + block.count
      block = { mean: (before.mean * before.count + block.mean * block.count) / count, count }
    }
    blocks.push(block)
  }
  return blocks.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean))
}

/** Log exposure at which the curve first reaches a density, straight from step to step; null before the first or after the last step. */
export const exposureAt = ({ logExposure, rising }: Characteristic, density: number): number | null => {
  const index = rising.findIndex((reading) => !below(reading, density))
  if (index < 0) return null
  if (same(rising[index]!, density)) return logExposure[index]!
  if (index === 0) return null
  const low = rising[index - 1]!
  const share = (density - low) / (rising[index]! - low)
  return logExposure[index - 1]! + share * (logExposure[index]! - logExposure[index - 1]!)
}

/** Density at a log exposure, straight from step to step; null outside the strip. */
export const densityAt = ({ logExposure, rising }: Characteristic, at: number): number | null => {
  const index = logExposure.findIndex((x) => !below(x, at))
  if (index < 0) return null
  if (same(logExposure[index]!, at)) return rising[index]!
  if (index === 0) return null
  const share = (at - logExposure[index - 1]!) / (logExposure[index]! - logExposure[index - 1]!)
  return rising[index - 1]! + share * (rising[index]! - rising[index - 1]!)
}

/** Speed point m of ISO 6: density 0.10 above base + fog. */
export const speedPoint = (strip: Characteristic): number | null => exposureAt(strip, strip.baseFog + 0.1)
