import type { StripCheck } from '../../plan/check.ts'
import { judgeStrip } from '../../plan/judge-strip.ts'
import type { DataOf } from '../../record/kinds.ts'
import { stripFigures, type Densities } from './figures.ts'

type Strip = DataOf<'strip'>
export type StripGiven = Pick<Strip, 'densities'> & Partial<Pick<Strip, 'batch' | 'stripIn' | 'bathTime' | 'from'>>

export const plainDensities = (densities: Strip['densities']): { [step: string]: number } =>
  Object.fromEntries(Object.entries(densities).map(([step, { value }]) => [step, value]))

/**
 * What an entry says of a strip: its densities, the figures that they give, and the verdict. `aims`: densities of the batch's aims by step; the figures
 * are judged about the figures of that curve. Where a check has no steps, what was keyed are the figures themselves.
 */
export const stripData = (check: StripCheck, given: StripGiven, aims?: Densities): StripGiven & Pick<Strip, 'logExposures' | 'figures' | 'gammaDefinition' | 'aims' | 'verdict'> => {
  const densities = plainDensities(given.densities)
  if (!check.steps) return { ...given, figures: densities, verdict: judgeStrip(check, densities).verdict }
  const { figures, curve } = stripFigures(check, densities)
  const aimFigures = aims && aimsOfFigures(check, aims)
  const logExposures = Object.fromEntries(check.steps.flatMap(({ name, logExposure }) => (logExposure === undefined || densities[name] === undefined ? [] : [[name, logExposure]])))
  return {
    ...given, figures, verdict: judgeStrip(check, figures, aimFigures).verdict,
    ...(Object.keys(logExposures).length ? { logExposures } : {}), ...(curve ? { gammaDefinition: curve.gammaBy } : {}), ...(aimFigures ? { aims: aimFigures } : {}),
  }
}

/** Aims of the figures that the plan has limits for, off the curve of a batch's aims. */
export const aimsOfFigures = (check: StripCheck, aims: Densities): { [figure: string]: number } => {
  const { figures } = stripFigures(check, aims)
  return Object.fromEntries(check.figures.flatMap(({ figure }) => (figures[figure] === undefined ? [] : [[figure, figures[figure]]])))
}
