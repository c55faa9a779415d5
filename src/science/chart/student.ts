/**
 * Quantile of Student's t: the t that is exceeded, on both sides together, with probability `outside` (0.1 for an interval of 90 %).
 *
 * Hill 1970, Algorithm 396, Communications of the ACM 13(10), 619: an expansion about the normal quantile, good to five figures for 3 degrees of freedom
 * and more; 1 and 2 have closed forms. The normal quantile is Acklam's rational form (from memory): its relative error of 1.2e-9 is far below what a
 * forecast is worth.
 *
 * @example studentT({ outside: 0.1, degrees: 10 }) // 1.812
 */
export const studentT = ({ outside, degrees }: { outside: number; degrees: number }): number => {
  if (degrees === 1) return Math.cos((outside * Math.PI) / 2) / Math.sin((outside * Math.PI) / 2)
  if (degrees === 2) return Math.sqrt(2 / (outside * (2 - outside)) - 2)
  const a = 1 / (degrees - 0.5)
  const b = (48 / a) / a
  let c = (((20700 * a) / b - 98) * a - 16) * a + 96.36
  const d = ((94.5 / (b + c) - 3) / b + 1) * Math.sqrt((a * Math.PI) / 2) * degrees
  let y = (d * outside) ** (2 / degrees)
  if (y > 0.05 + a) {
    const x = normalQuantile(outside / 2)
    y = x * x
    if (degrees < 5) c += 0.3 * (degrees - 4.5) * (x + 0.6)
    c = (((0.05 * d * x - 5) * x - 7) * x - 2) * x + b + c
    y = (((((0.4 * y + 6.3) * y + 36) * y + 94.5) / c - y - 3) / b + 1) * x
    y = Math.expm1(a * y * y)
  } else {
    y = ((1 / (((degrees + 6) / (degrees * y) - 0.089 * d - 0.822) * (degrees + 2) * 3) + 0.5 / (degrees + 4)) * y - 1) * (degrees + 1) / (degrees + 2) + 1 / y
  }
  return Math.sqrt(degrees * y)
}

// Acklam, rational approximation of the inverse normal distribution, relative error 1.15e-9; coefficients from memory, held against published quantiles.
const central = [-3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1, 2.506628277459239]
const centralBelow = [-5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1, 1]
const tail = [-7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968, 2.938163982698783]
const tailBelow = [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1]
const tailFrom = 0.02425

const polynomial = (coefficients: readonly number[], at: number): number => coefficients.reduce((sum, each) => sum * at + each, 0)

const normalQuantile = (share: number): number => {
  if (share < tailFrom) {
    const q = Math.sqrt(-2 * Math.log(share))
    return polynomial(tail, q) / polynomial(tailBelow, q)
  }
  const q = share - 0.5
  return (polynomial(central, q * q) * q) / polynomial(centralBelow, q * q)
}
