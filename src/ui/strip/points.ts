import type { StripCheck } from '../../plan/check.ts'
import { exposedSteps, type Densities } from '../../rounds/strip/figures.ts'
import type { CurvePoints } from './curve-chart.tsx'

/** Densities by step as a curve, in order of exposure. Steps without an exposure are not on it. */
export const pointsOfStrip = (check: StripCheck, densities: Densities): CurvePoints =>
  exposedSteps(check, densities).map(({ logExposure, density }) => [logExposure, density] as const).sort(([a], [b]) => a - b)

/** Steps in the order of the plan, as a curve against their number: for strips without exposures. */
export const hasExposures = ({ steps = [] }: StripCheck): boolean => steps.some(({ logExposure }) => logExposure !== undefined)

/** Decimals that the densitometer shows: those of the plan's figures in density, else two. */
export const densityDecimals = ({ figures }: StripCheck): number =>
  Math.max(...figures.filter(({ unit }) => unit === 'D').map(({ step }) => String(step).split('.')[1]?.length ?? 0), 0) || 2
