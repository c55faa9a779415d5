import { bracketedRoot } from '../root.ts'

/** One point of the curve: gamma after so many minutes. */
export interface DevelopmentPoint {
  minutes: number
  gamma: number
}

export interface FittedLaw {
  gammaInfinity: number
  ratePerMinute: number
}

/**
 * Least squares of γ = γ∞·(1 − e^(−κt)) by variable projection (Golub and Pereyra 1973): for each κ the best γ∞ is a quotient of
 * sums, so only one number is sought, the κ at which the sum of squares is flat. That root is bracketed, so it cannot
 * run away and needs no first guess, and where there is none the points have no such curve: that is said, not fitted.
 *
 * A general Levenberg–Marquardt (ml-levenberg-marquardt 5.1, with exact derivatives) reaches the same digits of the NIST set
 * Misra1a from both its starts, but ends after a set number of steps whether it has converged or not, and gives
 * constants for points that have none. A test keeps it as a second opinion.
 *
 * Undefined when no minimum lies within 0.01 ≤ κ·(longest time) and κ·(shortest time) ≤ 12: below, the gammas rise as a straight line
 * (γ∞ beyond a hundred times the last of them); above, the first of them already stands at γ∞ to six figures.
 */
export const fittedLaw = (points: readonly DevelopmentPoint[]): FittedLaw | undefined => {
  const minutes = points.map((point) => point.minutes)
  const slowest = 0.01 / Math.max(...minutes)
  const fastest = 12 / Math.min(...minutes)
  const grid = 240
  const rates = Array.from({ length: grid + 1 }, (_, index) => slowest * (fastest / slowest) ** (index / grid))

  let best: { ratePerMinute: number; sumOfSquares: number } | undefined
  for (let index = 0; index < grid; index++) {
    const low = rates[index]!
    const high = rates[index + 1]!
    // A minimum: the sum of squares falls before it and rises after it.
    if (!(fall(points, low) > 0 && fall(points, high) <= 0)) continue
    const ratePerMinute = bracketedRoot((rate) => fall(points, rate), { low, high, tolerance: 0 })
    const sumOfSquares = residualSumOfSquares(points, { ratePerMinute, gammaInfinity: bestGammaInfinity(points, ratePerMinute) })
    if (!best || sumOfSquares < best.sumOfSquares) best = { ratePerMinute, sumOfSquares }
  }
  return best && { ratePerMinute: best.ratePerMinute, gammaInfinity: bestGammaInfinity(points, best.ratePerMinute) }
}

export const residualSumOfSquares = (points: readonly DevelopmentPoint[], law: FittedLaw): number =>
  points.reduce((sum, { minutes, gamma }) => sum + (gamma + law.gammaInfinity * Math.expm1(-law.ratePerMinute * minutes)) ** 2, 0)

const bestGammaInfinity = (points: readonly DevelopmentPoint[], ratePerMinute: number): number => {
  let across = 0
  let square = 0
  for (const { minutes, gamma } of points) {
    const grown = -Math.expm1(-ratePerMinute * minutes)
    across += gamma * grown
    square += grown * grown
  }
  return across / square
}

/** Half the downhill slope of the sum of squares along κ, divided by γ∞: Σ residual · t · e^(−κt). */
const fall = (points: readonly DevelopmentPoint[], ratePerMinute: number): number => {
  const gammaInfinity = bestGammaInfinity(points, ratePerMinute)
  let sum = 0
  for (const { minutes, gamma } of points) {
    const left = Math.exp(-ratePerMinute * minutes)
    sum += (gamma + gammaInfinity * Math.expm1(-ratePerMinute * minutes)) * minutes * left
  }
  return sum
}

/**
 * Standard deviations of the two constants: residual variance × inverse of the 2 × 2 normal matrix of the derivatives
 * (1 − e^(−κt)) and γ∞·t·e^(−κt). Of more than two points only.
 */
export const standardErrors = (points: readonly DevelopmentPoint[], law: FittedLaw): { gammaInfinity: number; ratePerMinute: number; residual: number } => {
  let gg = 0
  let gk = 0
  let kk = 0
  for (const { minutes } of points) {
    const byGamma = -Math.expm1(-law.ratePerMinute * minutes)
    const byRate = law.gammaInfinity * minutes * Math.exp(-law.ratePerMinute * minutes)
    gg += byGamma * byGamma
    gk += byGamma * byRate
    kk += byRate * byRate
  }
  const variance = residualSumOfSquares(points, law) / (points.length - 2)
  const determinant = gg * kk - gk * gk
  return {
    gammaInfinity: Math.sqrt((variance * kk) / determinant),
    ratePerMinute: Math.sqrt((variance * gg) / determinant),
    residual: Math.sqrt(variance),
  }
}
