import { calculation } from '../calculation.ts'
import { outside } from '../decimal.ts'
import { noAnswer } from '../refusal.ts'
import { characteristicOf, densityAt, densityFields, speedPoint } from './characteristic.ts'

const contrastSpan = 1.3 // log exposure from m to n; ISO 6
const contrastLimits = { lower: 0.75, upper: 0.85 } // density of n above m; ISO 6, the ±0.05 from memory

// Nearest arithmetic speeds and their degrees; ISO 6 table, from memory. Exact values are 10^((degrees − 1)/10).
const arithmeticSpeeds = [
  3.2, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400,
]
const firstDegrees = 6

export const stripIsoSpeed = calculation({
  id: 'strip.isoSpeed',
  title: 'Speed point and contrast condition',
  inputs: {
    logExposureLuxSeconds: {
      kind: 'list',
      says: 'log exposure of each step, exposure in lux seconds',
      atLeast: 5,
      atMost: 500,
      of: { kind: 'number', unit: '1', says: 'log exposure', atLeast: -10, atMost: 10 },
    },
    ...densityFields,
  },
  outputs: {
    speedLogExposure: { kind: 'number', unit: '1', says: 'log exposure of point m, 0.10 above base + fog' },
    contrastMet: { kind: 'flag', says: 'the strip was developed to the standard’s contrast; null when it ends before point n', orNull: true },
    arithmeticSpeed: { kind: 'number', unit: '1', says: '0.8 ÷ exposure at m, not rounded' },
    nearestArithmeticSpeed: { kind: 'number', unit: '1', says: 'nearest of the standard’s steps; null outside its table', orNull: true },
    logarithmicSpeedDegrees: { kind: 'number', unit: '1', says: 'the same in degrees', whole: true },
    densityDifference: { kind: 'number', unit: '1', says: 'density of point n above point m', orNull: true },
    baseFog: { kind: 'number', unit: '1', says: 'base + fog' },
  },
  formula: 'm: D = base + fog + 0.10; n: 1.30 log exposure further; condition 0.75 ≤ D(n) − D(m) ≤ 0.85; S = 0.8 ÷ H(m); S° = 1 + 10 log₁₀ S',
  source: 'ISO 6:1993 (read in secondary descriptions; the tolerance of ±0.05 from memory)',
  domain:
    'ISO 6 excludes motion-picture film by its own scope: on cine stock this compares strips of one laboratory and is never an “ISO speed”. ' +
    'A speed counts only where the contrast condition is met. Exposure, illuminant and time before development as the standard has them.',
  example: {
    inputs: { logExposureLuxSeconds: [-3, -2.7, -2.4, -2.1, -1.8, -1.5, -1.2, -0.9, -0.6], density: [0.2, 0.2, 0.24, 0.36, 0.53, 0.72, 0.91, 1.1, 1.28] },
    result: { speedLogExposure: -2.25, arithmeticSpeed: 142.2624, nearestArithmeticSpeed: 160, logarithmicSpeedDegrees: 23, contrastMet: true, densityDifference: 0.76833 },
    tolerance: 5e-5,
    source: 'worked by hand, invented strip',
  },
  run: ({ logExposureLuxSeconds, density, baseFog }) => {
    const strip = characteristicOf('logExposureLuxSeconds', { logExposure: logExposureLuxSeconds, density, baseFog })
    const speedLogExposure = speedPoint(strip)
    if (speedLogExposure === null)
      throw noAnswer('density', density, 'densities that start below base + fog + 0.10 and pass it')
    const upper = densityAt(strip, speedLogExposure + contrastSpan)
    const densityDifference = upper === null ? null : upper - strip.baseFog - 0.1
    const arithmeticSpeed = 0.8 / 10 ** speedLogExposure
    const logarithmicSpeedDegrees = Math.round(1 + 10 * Math.log10(arithmeticSpeed))
    return {
      speedLogExposure,
      contrastMet: densityDifference === null ? null : !outside(densityDifference, contrastLimits),
      arithmeticSpeed,
      nearestArithmeticSpeed: arithmeticSpeeds[logarithmicSpeedDegrees - firstDegrees] ?? null,
      logarithmicSpeedDegrees,
      densityDifference,
      baseFog: strip.baseFog,
    }
  },
  steps: (_, { baseFog, speedLogExposure, densityDifference, contrastMet, arithmeticSpeed, nearestArithmeticSpeed, logarithmicSpeedDegrees }) => [
    { says: 'base + fog', value: baseFog, unit: '1' },
    { says: 'point m', formula: 'where D = base + fog + 0.10', value: speedLogExposure, unit: '1' },
    { says: 'density of n above m', formula: 'D at 1.30 further − D(m)', value: densityDifference ?? 'the strip ends before', unit: '1' },
    { says: 'contrast condition, 0.75 to 0.85', value: contrastMet === null ? 'cannot be said' : contrastMet ? 'met' : 'not met' },
    { says: 'speed', formula: '0.8 ÷ 10^(log exposure of m)', value: arithmeticSpeed, unit: '1' },
    { says: 'nearest step of the scale', value: nearestArithmeticSpeed ?? 'outside the table', unit: '1' },
    { says: 'in degrees', formula: '1 + 10 log₁₀ S, rounded', value: logarithmicSpeedDegrees, unit: '°' },
  ],
})
