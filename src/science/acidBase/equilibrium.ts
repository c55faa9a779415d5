import { noAnswer } from '../refusal.ts'
import { bracketedRoot } from '../root.ts'
import { balanceAt } from './balance.ts'
import type { Medium } from './medium.ts'
import type { Solution } from './solution.ts'

/**
 * Ionic strength, mol/L, beyond which no water holds the salts (60 % ammonium thiosulfate stands near 16) and plain Davies gives activity
 * coefficients in the millions.
 */
const utmostStrength = 30

export const checkedStrength = (ionicStrength: number): number => {
  if (ionicStrength > utmostStrength) throw noAnswer('bath', ionicStrength, `an ionic strength of at most ${utmostStrength} mol/L, more than water dissolves`)
  return ionicStrength
}

export interface Equilibrium {
  pH: number
  /** mol/L */
  ionicStrength: number
}

/**
 * pH at which the charges of a solution balance, with the ionic strength that its own forms make.
 *
 * At a given ionic strength the net charge falls strictly as the pH rises, so the inner root is single. The outer root is of
 * (ionic strength made − ionic strength assumed), which is positive at 0 and negative at the bound below: both are bracketed.
 */
export const equilibriumOf = (medium: Medium, solution: Solution): Equilibrium => {
  let pH = 7
  const made = (assumed: number): number => {
    pH = neutralPh(medium, solution, assumed, pH)
    return balanceAt(medium, solution, pH, assumed).squares / 2
  }
  const ionicStrength = selfConsistent(made)
  return { pH: neutralPh(medium, solution, ionicStrength, pH), ionicStrength }
}

/**
 * What must be added of strong charge (mol/L, positive as sodium, negative as chloride) so that a solution stands at a given pH,
 * and the ionic strength that it then has.
 */
export const strongChargeAt = (medium: Medium, solution: Solution, pH: number): { strongCharge: number; ionicStrength: number } => {
  const ionicStrength = selfConsistent((assumed) => {
    const { charge, squares } = balanceAt(medium, solution, pH, assumed)
    return (squares + Math.abs(charge)) / 2
  })
  return { strongCharge: -balanceAt(medium, solution, pH, ionicStrength).charge, ionicStrength }
}

/** A solution with added strong charge. */
export const withStrongCharge = (solution: Solution, molPerLitre: number): Solution => ({
  ...solution,
  strongCharge: solution.strongCharge + molPerLitre,
  strongSquares: solution.strongSquares + Math.abs(molPerLitre),
})

const strengthTolerance = 1e-12 // of the ionic strength, or mol/L below 1

/** The ionic strength that makes itself: secant steps, which take few turns; a bracket where they do not settle. */
export const selfConsistent = (made: (assumed: number) => number): number => {
  let before = 0.5
  let excessBefore = made(before) - before
  let here = before + excessBefore
  for (let turn = 0; turn < 12; turn++) {
    const excess = made(here) - here
    if (Math.abs(excess) <= strengthTolerance * Math.max(1, here)) return here + excess
    const next = here - (excess * (here - before)) / (excess - excessBefore)
    before = here
    excessBefore = excess
    here = next > 0 ? next : here + excess
  }
  let high = 1
  while (made(high) > high) high *= 2
  return bracketedRoot((strength) => made(strength) - strength, { low: 0, high, tolerance: strengthTolerance })
}

/** Newton on the net charge, kept inside a bracket: a step that would leave it, or that gains too little, is a halving. */
const neutralPh = (medium: Medium, solution: Solution, ionicStrength: number, start: number): number => {
  let low = -2
  let high = 16
  while (balanceAt(medium, solution, low, ionicStrength).charge < 0) low -= 8
  while (balanceAt(medium, solution, high, ionicStrength).charge > 0) high += 8
  let pH = start > low && start < high ? start : (low + high) / 2
  let before = high - low
  for (let turn = 0; turn < 200; turn++) {
    const { charge, capacity } = balanceAt(medium, solution, pH, ionicStrength)
    if (charge === 0) return pH
    if (charge > 0) low = pH
    else high = pH
    const newton = pH + charge / capacity
    const next = newton > low && newton < high && Math.abs(newton - pH) < before / 2 ? newton : (low + high) / 2
    before = Math.abs(next - pH)
    pH = next
    if (before <= 1e-13 * (1 + Math.abs(pH)) || high - low <= 1e-13 * (1 + Math.abs(pH))) return pH
  }
  throw new Error('a pH that is bracketed was not found')
}
