export interface StraightLine {
  slope: number
  intercept: number
  /** Standard deviation of the points about the line; 0 of two points. */
  residual: number
  slopeStandardError: number
  interceptStandardError: number
  /** Σ (x − mean of x)². */
  spread: number
}

/**
 * Least squares of y on x. Sums are taken about the means, which keeps the digits that the textbook form Σxy − n·x̄·ȳ
 * loses. Needs two different x.
 */
export const straightLine = (x: readonly number[], y: readonly number[]): StraightLine => {
  const count = x.length
  const meanX = sum(x) / count
  const meanY = sum(y) / count
  let spread = 0
  let across = 0
  for (let index = 0; index < count; index++) {
    const dx = x[index]! - meanX
    spread += dx * dx
    across += dx * (y[index]! - meanY)
  }
  const slope = across / spread
  const intercept = meanY - slope * meanX
  let squares = 0
  for (let index = 0; index < count; index++) squares += (y[index]! - meanY - slope * (x[index]! - meanX)) ** 2
  const residual = count > 2 ? Math.sqrt(squares / (count - 2)) : 0
  return {
    slope,
    intercept,
    residual,
    slopeStandardError: residual / Math.sqrt(spread),
    interceptStandardError: residual * Math.sqrt(1 / count + meanX ** 2 / spread),
    spread,
  }
}

const sum = (list: readonly number[]): number => list.reduce((total, each) => total + each, 0)
