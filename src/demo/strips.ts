import type { StripCheck } from '../plan/check.ts'
import type { EntryId } from '../record/ids.ts'
import { judgeStrip } from '../plan/judge-strip.ts'
import type { DataOf } from '../record/kinds.ts'
import { stripFigures } from '../rounds/strip/figures.ts'
import type { Random } from './random.ts'

export const demoBatch = 'B 14'

/** Rounding of the corners of the curve, in log exposure. */
const softness = 0.08

interface Made {
  fog: number
  gamma: number
  toe: number
  range: number
}

/** A characteristic curve with toe, straight line and shoulder: γ·s·[ln(1 + e^((x−a)/s)) − ln(1 + e^((x−b)/s))] above fog. Invented shape. */
const densityAt = (logExposure: number, { fog, gamma, toe, range }: Made): number => {
  const soft = (from: number): number => softness * Math.log1p(Math.exp((logExposure - from) / softness))
  return fog + gamma * (soft(toe) - soft(toe + range / gamma))
}

/** The curve on all aims of the plan, and how far each figure of it may wander before it is out. */
const onAim = (check: StripCheck): { made: Made; action: (figure: string) => number } => {
  const figure = (name: string) => check.figures.find((it) => it.figure === name)?.limits
  const aim = (name: string, otherwise: number): number => figure(name)?.aim ?? otherwise
  const gamma = aim('gamma', 0.65)
  return {
    made: {
      fog: aim('baseFog', 0.2),
      gamma,
      // The speed point lies where the curve is 0.10 above fog: below the corner by what the toe gives there.
      toe: aim('speed', -2) + softness * -Math.log(Math.expm1(0.1 / (gamma * softness))),
      range: gamma > 1.5 ? 3.4 : 1.6,
    },
    action: (name) => {
      const limits = figure(name)
      return limits?.actionHigh === undefined ? 0.02 : limits.actionHigh - limits.aim
    },
  }
}

const read = (check: StripCheck, made: Made): { densities: DataOf<'strip'>['densities']; logExposures: Record<string, number> } => {
  const densities: DataOf<'strip'>['densities'] = {}
  const logExposures: Record<string, number> = {}
  for (const { name, logExposure } of check.steps ?? []) {
    if (logExposure === undefined) continue
    const keyed = densityAt(logExposure, made).toFixed(2)
    densities[name] = { value: Number(keyed), keyed }
    logExposures[name] = logExposure
  }
  return { densities, logExposures }
}

const plain = (densities: DataOf<'strip'>['densities']): Record<string, number> => Object.fromEntries(Object.entries(densities).map(([step, { value }]) => [step, value]))

/** The batch in use, with the densities of its reference strip as aims. */
export const demoStripBatch = (check: StripCheck): DataOf<'stripBatch'> => {
  const aims = plain(read(check, onAim(check).made).densities)
  return { check: check.id, batch: demoBatch, aims, reference: aims }
}

/** A wedge as the densitometer would read it, and its figures as the calculation gives them. `off` moves gamma by so much. */
export const wedgeStrip = (check: StripCheck, plan: EntryId, random: Random, off = 0): DataOf<'strip'> => {
  const { made, action } = onAim(check)
  const moved = {
    ...made,
    fog: made.fog + 0.2 * action('baseFog') * random.normal(),
    gamma: made.gamma + 0.2 * action('gamma') * random.normal() + off,
    toe: made.toe + 0.2 * action('speed') * random.normal(),
  }
  const { densities, logExposures } = read(check, moved)
  const { figures, curve } = stripFigures(check, plain(densities))
  const aims = stripFigures(check, demoStripBatch(check).aims).figures
  return {
    check: check.id, plan, batch: demoBatch, densities, logExposures, figures, aims, ...(curve ? { gammaDefinition: curve.gammaBy } : {}), verdict: judgeStrip(check, figures, aims).verdict,
  }
}
