import type { Fields } from '../field.ts'

/**
 * Growth of contrast with time of development: γ = γ∞·(1 − e^(−κt)).
 *
 * γ∞ is the gamma that endless development would reach, κ (per minute) the rate. Law of Hurter and Driffield in the form of
 * Sheppard and Mees (from memory); Ives, Airplane Photography, 1920, names it with these constants. Fog and the time until
 * the developer has soaked in are neglected: the first minute of a real curve lies below it.
 */
export const gammaAt = (law: { gammaInfinity: number; ratePerMinute: number; minutes: number }): number =>
  law.gammaInfinity * -Math.expm1(-law.ratePerMinute * law.minutes)

/** t = −ln(1 − γ/γ∞)/κ, for γ below γ∞. */
export const minutesTo = (law: { gammaInfinity: number; ratePerMinute: number; gamma: number }): number =>
  -Math.log1p(-law.gamma / law.gammaInfinity) / law.ratePerMinute

export const lawFields = {
  gammaInfinity: { kind: 'number', unit: '1', says: 'gamma that endless development would reach', above: 0 },
  ratePerMinute: { kind: 'number', unit: '1/min', says: 'rate of development', above: 0 },
} as const satisfies Fields
