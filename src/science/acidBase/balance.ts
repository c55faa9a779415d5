import { logGammaPerChargeSquared } from './activity.ts'
import { boricIndex, type Medium } from './medium.ts'
import type { Solution } from './solution.ts'

/** Sums over every ion of a solution at one pH and ionic strength. */
export interface Balance {
  /** Net charge, mol/L: zero in a real solution. */
  charge: number
  /** Σ c z², mol/L: twice the ionic strength that these forms make. */
  squares: number
  /** −d charge / d pH at constant ionic strength, mol/L per pH: never negative, so the charge falls as the pH rises. */
  capacity: number
}

const tenTo = (x: number): number => Math.exp(x * Math.LN10)

/**
 * Charge balance of all listed substances at a pH (−log₁₀ of the activity of H⁺) and an ionic strength in mol/L.
 *
 * For an acid losing a proton from charge z to z − 1: log [A]/[HA] = pH − pK + (2 z − 1) log γ₁, with log γ_z = z² log γ₁
 * (Davies). Neutral forms have γ = 1 and the activity of water is 1; ion pairs, precipitates, redox and the escape of CO₂, SO₂ and NH₃
 * are neglected, as is the protonation of thiosulfate, which matters only below about pH 3.5, where it decomposes anyway.
 */
export const balanceAt = (medium: Medium, solution: Solution, pH: number, ionicStrength: number): Balance => {
  const g = logGammaPerChargeSquared(ionicStrength, medium.activity, medium.a)
  const hydrogen = tenTo(-pH - g)
  const hydroxide = tenTo(pH - medium.pKw - g)
  let charge = solution.strongCharge + hydrogen - hydroxide
  let squares = solution.strongSquares + hydrogen + hydroxide
  let spread = hydrogen + hydroxide
  for (let index = 0; index < medium.systems.length; index++) {
    const total = solution.totals[index]!
    if (total === 0) continue
    if (index === boricIndex && medium.polymers.length > 0) {
      const borate = borateAt(medium, total, pH, g)
      charge -= borate.anions
      squares += borate.anions
      spread += borate.spread
      continue
    }
    const { topCharge, pKs } = medium.systems[index]!
    const { mean, meanSquare } = chargeOf(topCharge, pKs, pH, g)
    charge += total * mean
    squares += total * meanSquare
    spread += total * Math.max(0, meanSquare - mean * mean)
  }
  return { charge, squares, capacity: Math.LN10 * spread }
}

/**
 * Mean charge and mean square of the charge over the forms of one acid. Weights are taken relative to the largest, so that none overflows;
 * no array is made, because a dose comes here some thousand times.
 */
const chargeOf = (topCharge: number, pKs: readonly number[], pH: number, g: number): { mean: number; meanSquare: number } => {
  const largest = largestLogWeight(topCharge, pKs, pH, g)
  let log = 0
  let sum = tenTo(-largest)
  let first = sum * topCharge
  let second = first * topCharge
  for (let lost = 0; lost < pKs.length; lost++) {
    const z = topCharge - lost
    log += pH - pKs[lost]! + (2 * z - 1) * g
    const weight = tenTo(log - largest)
    sum += weight
    first += weight * (z - 1)
    second += weight * (z - 1) * (z - 1)
  }
  return { mean: first / sum, meanSquare: second / sum }
}

const largestLogWeight = (topCharge: number, pKs: readonly number[], pH: number, g: number): number => {
  let log = 0
  let largest = 0
  for (let lost = 0; lost < pKs.length; lost++) {
    log += pH - pKs[lost]! + (2 * (topCharge - lost) - 1) * g
    if (log > largest) largest = log
  }
  return largest
}

/** Share of each form of an acid, most acid first, for the working. */
export const sharesOf = (topCharge: number, pKs: readonly number[], pH: number, g: number): number[] => {
  const logs = [0]
  for (let lost = 0; lost < pKs.length; lost++) logs.push(logs[lost]! + pH - pKs[lost]! + (2 * (topCharge - lost) - 1) * g)
  const largest = Math.max(...logs)
  const weights = logs.map((log) => tenTo(log - largest))
  const sum = weights.reduce((all, weight) => all + weight, 0)
  return weights.map((weight) => weight / sum)
}

/**
 * Boric acid with its polymers: every anion carries one charge, an anion of n borons stands at k_n b^n with b = [B(OH)₃].
 * The mass balance in b rises and is convex, so Newton from its upper end b = total / (1 + k₁) falls onto the root without overshoot.
 */
const borateAt = (medium: Medium, total: number, pH: number, g: number): { anions: number; spread: number } => {
  const forms = [{ borons: 1, pK: medium.systems[boricIndex]!.pKs[0]! }, ...medium.polymers].map(({ borons, pK }) => ({ borons, k: tenTo(pH - pK - g) }))
  let b = total / (1 + forms[0]!.k)
  for (let turn = 0; turn < 100; turn++) {
    let mass = b
    let slope = 1
    for (const { borons, k } of forms) {
      mass += borons * k * b ** borons
      slope += borons * borons * k * b ** (borons - 1)
    }
    const next = b - (mass - total) / slope
    const settled = Math.abs(next - b) <= 1e-15 * b
    b = next
    if (settled) break
  }
  let anions = 0
  let first = 0
  let second = b
  for (const { borons, k } of forms) {
    const form = k * b ** borons
    anions += form
    first += borons * form
    second += borons * borons * form
  }
  return { anions, spread: anions - (first * first) / second }
}
