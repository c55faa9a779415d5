import type { StripCheck } from '../../plan/check.ts'
import { tidy } from '../../science/decimal.ts'
import { resultOf } from '../../science/evaluate.ts'
import { Refusal, type RefusalFacts } from '../../science/refusal.ts'
import { stripCurve } from '../../science/strip/curve.ts'

export type Densities = Readonly<Record<string, number>>
export type Curve = ReturnType<typeof stripCurve.run>

export interface StripFigures {
  /** Every figure that the densities give, those of the plan on the step that it prints. */
  figures: { [figure: string]: number }
  curve?: Curve
  /** Why there is no curve; `step` names the step to be read again, where one stands against its neighbours. */
  refusal?: RefusalFacts & { step?: string }
}

/** Steps of the plan that were read and have an exposure, in the plan's order. */
export const exposedSteps = ({ steps = [] }: Pick<StripCheck, 'steps'>, densities: Densities): { name: string; logExposure: number; density: number }[] =>
  steps.flatMap(({ name, logExposure }) => {
    const density = densities[name]
    return logExposure === undefined || density === undefined ? [] : [{ name, logExposure, density }]
  })

/**
 * The figures of a strip from its densities, by the same calculation that Bench shows. A missing step is left out and not taken for nought.
 *
 * @example stripFigures(check, { '1': 0.24, '2': 0.24 }).refusal?.code // 'tooFew'
 */
export const stripFigures = (check: StripCheck, densities: Densities): StripFigures => {
  const figures: StripFigures['figures'] = {}
  for (const { name } of check.steps ?? []) {
    const wanted = check.figures.some(({ figure }) => figure === name)
    if (wanted && densities[name] !== undefined) figures[name] = densities[name]
  }
  if (check.contrast) {
    const upper = densities[check.contrast.upper]
    const lower = densities[check.contrast.lower]
    if (upper !== undefined && lower !== undefined) figures['contrast'] = tidy(upper - lower)
  }
  const drawn = curveOf(check, densities)
  if ('refusal' in drawn) return { figures: printed(check, figures), refusal: drawn.refusal }
  const { baseFog, speedLogExposure, gamma, averageGradient, dMax } = drawn.curve
  Object.assign(figures, { baseFog, gamma, dMax })
  if (speedLogExposure !== null) figures['speed'] = speedLogExposure
  if (averageGradient !== null) figures['averageGradient'] = averageGradient
  return { figures: printed(check, figures), curve: drawn.curve }
}

const curveOf = (check: StripCheck, densities: Densities): { curve: Curve } | { refusal: NonNullable<StripFigures['refusal']> } => {
  const read = exposedSteps(check, densities)
  const { by = 'greatestSlope', fromDensity, toDensity } = check.gamma ?? {}
  try {
    const curve = resultOf(stripCurve, {
      logExposure: read.map(({ logExposure }) => logExposure), density: read.map(({ density }) => density), gammaBy: by,
      ...(fromDensity === undefined ? {} : { fromDensity }), ...(toDensity === undefined ? {} : { toDensity }),
    })
    return { curve }
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown
    const { code, field, value, allowed } = thrown
    const index = /^density\[(\d+)\]$/.exec(field)?.[1]
    const step = index === undefined ? undefined : read[Number(index)]?.name
    return { refusal: { code, field, value, allowed, ...(step === undefined ? {} : { step }) } }
  }
}

/** A figure is judged as it is printed; one without limits keeps a thousandth. */
const printed = (check: StripCheck, figures: StripFigures['figures']): StripFigures['figures'] =>
  Object.fromEntries(
    Object.entries(figures).map(([name, value]) => {
      const step = check.figures.find(({ figure }) => figure === name)?.step ?? 0.001
      return [name, tidy(Math.round(value / step) * step)]
    }),
  )
