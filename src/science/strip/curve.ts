import { calculation } from '../calculation.ts'
import { same } from '../decimal.ts'
import { noAnswer, Refusal } from '../refusal.ts'
import { characteristicOf, densityAt, densityFields, speedPoint, stripFlags, type Characteristic } from './characteristic.ts'
import { gammaDefinitions, greatestSlope, printControlSlope, slopeBetween, type Gamma, type GammaDefinition } from './gamma.ts'

const gradientSpan = 1.5 // log exposure; one of the conventions in use for the average gradient

interface GammaChoice {
  gammaBy: GammaDefinition
  fromDensity?: number | undefined
  toDensity?: number | undefined
}

const gammaOf = (strip: Characteristic, choice: GammaChoice): Gamma => {
  const { found, wanted } = definitionOf[choice.gammaBy](strip, choice)
  if (!found) throw noAnswer('density', strip.density, wanted)
  return found
}

const definitionOf: Record<GammaDefinition, (strip: Characteristic, choice: GammaChoice) => { found: Gamma | null; wanted: string }> = {
  greatestSlope: (strip) => ({ found: greatestSlope(strip), wanted: 'three steps or more that span 0.45 log exposure' }),
  betweenDensities: (strip, choice) => {
    const { fromDensity, toDensity } = densitiesOf(choice)
    return { found: slopeBetween(strip, { fromDensity, toDensity }), wanted: `three steps or more with densities from ${fromDensity} to ${toDensity}` }
  },
  printControl: (strip) => ({ found: printControlSlope(strip), wanted: 'a curve that reaches 0.95 above base + fog and 0.50 log exposure further' }),
}

const densitiesOf = ({ fromDensity, toDensity }: GammaChoice): { fromDensity: number; toDensity: number } => {
  if (fromDensity === undefined) throw new Refusal({ code: 'missing', field: 'fromDensity', value: fromDensity, allowed: 'a number, less than toDensity' })
  if (toDensity === undefined || !(toDensity > fromDensity))
    throw new Refusal({ code: toDensity === undefined ? 'missing' : 'outOfRange', field: 'toDensity', value: toDensity, allowed: `a number, more than ${fromDensity}` })
  return { fromDensity, toDensity }
}

const definitionText = ({ gammaBy, fromDensity, toDensity }: GammaChoice): string =>
  ({
    greatestSlope: 'greatest least-squares slope over three or more steps spanning 0.45 log exposure, less five standard errors at its choice',
    betweenDensities: `least-squares slope over the steps with densities from ${fromDensity} to ${toDensity}`,
    printControl: 'slope from 0.95 above base + fog to the point 0.50 log exposure further',
  })[gammaBy]

/**
 * The characteristic curve of a strip. Definitions of gamma differ by several per cent on one strip, so the definition is part of
 * the answer and must be stored with the number.
 */
export const stripCurve = calculation({
  id: 'strip.curve',
  title: 'Characteristic curve',
  inputs: {
    logExposure: {
      kind: 'list',
      says: 'log exposure of each step; absolute or relative',
      atLeast: 5,
      atMost: 500,
      of: { kind: 'number', unit: '1', says: 'log exposure', atLeast: -10, atMost: 10 },
    },
    ...densityFields,
    gammaBy: { kind: 'choice', says: 'definition of gamma', of: gammaDefinitions, preset: 'greatestSlope' },
    fromDensity: { kind: 'number', unit: '1', says: 'lower end of the densities (for a gamma between two densities)', atLeast: 0, atMost: 6, optional: true },
    toDensity: { kind: 'number', unit: '1', says: 'upper end of the densities', atLeast: 0, atMost: 6, optional: true },
  },
  outputs: {
    baseFog: { kind: 'number', unit: '1', says: 'base + fog' },
    dMax: { kind: 'number', unit: '1', says: 'greatest density on the strip' },
    gamma: { kind: 'number', unit: '1', says: 'slope of the straight part' },
    gammaRange: {
      kind: 'list',
      says: 'log exposures from and to which that slope was taken',
      atLeast: 2,
      atMost: 2,
      of: { kind: 'number', unit: '1', says: 'log exposure' },
    },
    gammaBy: { kind: 'choice', says: 'definition of gamma, to be stored with it', of: gammaDefinitions },
    gammaDefinition: { kind: 'text', says: 'the definition in words' },
    gammaIntercept: { kind: 'number', unit: '1', says: 'density of the straight line at log exposure 0' },
    gammaSteps: { kind: 'number', unit: '1', says: 'steps under the straight line; 0 where it joins two points of the curve', whole: true },
    gammaStandardError: { kind: 'number', unit: '1', says: 'standard deviation of gamma', orNull: true },
    speedLogExposure: { kind: 'number', unit: '1', says: 'log exposure 0.10 above base + fog; null when it is not on the strip', orNull: true },
    averageGradient: { kind: 'number', unit: '1', says: 'slope from there over 1.50 log exposure; null when the strip ends before', orNull: true },
    flags: { kind: 'list', says: 'what to know about this strip', of: { kind: 'choice', says: 'flag', of: stripFlags } },
  },
  formula:
    'gamma = Σ(x − x̄)(D − D̄) ÷ Σ(x − x̄)² over the steps chosen; speed point: D = base + fog + 0.10, straight between steps; average gradient = (D at +1.50 − D there) ÷ 1.50',
  source:
    'speed point: ISO 6; least squares: Gauss; gamma as the slope of the straight part: US Navy, Photography (Advanced) NAVEDTRA 14208, 1995; average gradient over 1.50: a maker’s convention',
  domain:
    'Negative-working film, densities that rise with exposure, 5 steps or more over 0.9 log exposure. Refused: falling, flat or broken strips. Densitometer noise of 0.01 ' +
    'moves a gamma of 0.68 by at most 0.02 (98 of 100) and the speed point by about 0.04.',
  example: {
    inputs: {
      logExposure: [0, 0.15, 0.3, 0.45, 0.6, 0.75, 0.9, 1.05, 1.2, 1.35, 1.5, 1.65, 1.8, 1.95, 2.1, 2.25, 2.4, 2.55, 2.7, 2.85, 3],
      density: [0.24, 0.24, 0.25, 0.27, 0.31, 0.37, 0.46, 0.55, 0.65, 0.75, 0.85, 0.95, 1.06, 1.16, 1.26, 1.36, 1.46, 1.57, 1.67, 1.77, 1.87],
    },
    result: { baseFog: 0.24, dMax: 1.87, gamma: 0.68, speedLogExposure: 0.675, averageGradient: 0.6467 },
    tolerance: 1.2e-3,
    source: 'drawn from an analytic curve of gamma 0.680, rounded to 0.01',
  },
  run: ({ logExposure, density, baseFog, ...choice }) => {
    const strip = characteristicOf('logExposure', { logExposure, density, baseFog })
    const { gamma, intercept, range, steps, standardError } = gammaOf(strip, choice)
    const speedLogExposure = speedPoint(strip)
    const gradientEnd = speedLogExposure === null ? null : densityAt(strip, speedLogExposure + gradientSpan)
    const flags = [...strip.flags]
    if (speedLogExposure === null) flags.push('noSpeedPoint')
    else if (gradientEnd === null) flags.push('endsBeforeGradient')
    if (same(range[1], strip.logExposure.at(-1)!)) flags.push('straightToEnd')
    return {
      baseFog: strip.baseFog,
      dMax: strip.rising.at(-1)!,
      gamma,
      gammaRange: [...range],
      gammaBy: choice.gammaBy,
      gammaDefinition: definitionText(choice),
      gammaIntercept: intercept,
      gammaSteps: steps,
      gammaStandardError: standardError,
      speedLogExposure,
      averageGradient: gradientEnd === null ? null : (gradientEnd - strip.baseFog - 0.1) / gradientSpan,
      flags,
    }
  },
  steps: (_, { baseFog, gamma, gammaRange, gammaDefinition, gammaSteps, gammaIntercept, speedLogExposure, averageGradient }) => [
    { says: 'base + fog', value: baseFog, unit: '1' },
    { says: 'straight part from log exposure', formula: gammaDefinition, value: gammaRange[0]!, unit: '1' },
    { says: 'to log exposure', ...(gammaSteps > 0 ? { formula: `${gammaSteps} steps` } : {}), value: gammaRange[1]!, unit: '1' },
    { says: 'gamma', formula: gammaSteps > 0 ? 'Σ(x − x̄)(D − D̄) ÷ Σ(x − x̄)²' : '(D end − D start) ÷ 0.50', value: gamma, unit: '1' },
    { says: 'density of that line at log exposure 0', value: gammaIntercept, unit: '1' },
    { says: 'speed point', formula: 'where D = base + fog + 0.10', value: speedLogExposure ?? 'not on the strip', unit: '1' },
    { says: 'average gradient', formula: '(D at speed point + 1.50 − D at speed point) ÷ 1.50', value: averageGradient ?? 'the strip ends before', unit: '1' },
  ],
})
