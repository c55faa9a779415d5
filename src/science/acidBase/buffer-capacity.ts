import { balanceAt } from './balance.ts'
import { strongChargeAt } from './equilibrium.ts'
import type { Medium } from './medium.ts'
import type { Solution } from './solution.ts'

const stride = 5e-4 // pH

/**
 * Buffer capacity in mol of strong univalent base per litre and pH, at a pH at which the solution is neutral. The cation of the base counts
 * in the ionic strength, so that the number is what a small add of hydroxide really meets. Forward difference of second order.
 */
export const bufferCapacityAt = (medium: Medium, solution: Solution, pH: number): number => {
  const one = strongChargeAt(medium, solution, pH + stride).strongCharge
  const two = strongChargeAt(medium, solution, pH + 2 * stride).strongCharge
  return (4 * one - two) / (2 * stride)
}

/** The same at constant ionic strength, from the spread of charges: Σ c (mean z² − (mean z)²) ln 10. */
export const bufferCapacityAtConstantStrength = (medium: Medium, solution: Solution, { pH, ionicStrength }: { pH: number; ionicStrength: number }): number =>
  balanceAt(medium, solution, pH, ionicStrength).capacity
