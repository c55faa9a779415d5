import type { StripCheck } from '../plan/check.ts'
import type { EntryId } from '../record/ids.ts'
import { judgeStrip } from '../plan/judge-strip.ts'
import type { DataOf } from '../record/kinds.ts'
import { resultOf } from '../science/evaluate.ts'
import { stripCurve } from '../science/strip/curve.ts'
import type { Random } from './random.ts'

const steps = 21
const stepLogExposure = 0.15

/** Rounding of the corners of the curve, in log exposure. */
const softness = 0.08

/** A characteristic curve with toe, straight line and shoulder: γ·s·[ln(1 + e^((x−a)/s)) − ln(1 + e^((x−b)/s))] above fog. Invented shape. */
const densityAt = (logExposure: number, { fog, gamma, toe, range }: { fog: number; gamma: number; toe: number; range: number }): number => {
  const soft = (from: number): number => softness * Math.log1p(Math.exp((logExposure - from) / softness))
  return fog + gamma * (soft(toe) - soft(toe + range / gamma))
}

/** A wedge as the densitometer would read it, and its figures as the calculation gives them. `off` moves gamma by so much. */
export const wedgeStrip = (check: StripCheck, plan: EntryId, random: Random, off = 0): DataOf<'strip'> => {
  const aim = (figure: string, otherwise: number): number => check.figures.find((it) => it.figure === figure)?.limits.aim ?? otherwise
  const action = (figure: string): number => {
    const limits = check.figures.find((it) => it.figure === figure)?.limits
    return limits?.actionHigh === undefined ? 0.02 : limits.actionHigh - limits.aim
  }
  const gammaAim = aim('gamma', 0.65)
  const made = {
    fog: aim('baseFog', 0.2) + 0.2 * action('baseFog') * random.normal(),
    gamma: gammaAim + 0.2 * action('gamma') * random.normal() + off,
    // The speed point lies where the curve is 0.10 above fog: below the corner by what the toe gives there.
    toe: aim('speed', -2) + softness * -Math.log(Math.expm1(0.1 / (gammaAim * softness))) + 0.2 * action('speed') * random.normal(),
    range: gammaAim > 1.5 ? 3.4 : 1.6,
  }
  const logExposures: Record<string, number> = {}
  const densities: Record<string, { value: number; keyed: string }> = {}
  for (let step = 1; step <= steps; step++) {
    const logExposure = Number(((step - steps) * stepLogExposure).toFixed(2))
    const keyed = densityAt(logExposure, made).toFixed(2)
    logExposures[String(step)] = logExposure
    densities[String(step)] = { value: Number(keyed), keyed }
  }
  const { baseFog, gamma, speedLogExposure } = resultOf(stripCurve, { logExposure: Object.values(logExposures), density: Object.values(densities).map(({ value }) => value) })
  const figures: Record<string, number> = { baseFog, gamma: Number(gamma.toFixed(2)), ...(speedLogExposure === null ? {} : { speed: Number(speedLogExposure.toFixed(2)) }) }
  return { check: check.id, plan, batch: 'B 14', densities, logExposures, figures, gammaDefinition: 'greatestSlope', verdict: judgeStrip(check, figures).verdict }
}
