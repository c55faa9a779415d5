/**
 * Which side of a limit a value lies on, decided as one would on paper: readings and limits are decimals of at most nine figures,
 * so a difference below a thousand-millionth is an artefact of binary arithmetic (0.1 + 0.2 is not above 0.3) and counts as
 * lying on the limit. A value on a limit is inside it.
 */
const guard = (value: number, limit: number): number => 1e-9 * Math.max(1, Math.abs(value), Math.abs(limit))

export const above = (value: number, limit: number): boolean => value - limit > guard(value, limit)
export const below = (value: number, limit: number): boolean => limit - value > guard(value, limit)
export const same = (value: number, other: number): boolean => !above(value, other) && !below(value, other)

/** Beyond either limit. */
export const outside = (value: number, limits: { lower: number; upper: number }): boolean =>
  above(value, limits.upper) || below(value, limits.lower)

/** The decimal that a sum or difference of decimals stands for: 0.66 − 0.6 is 0.06, not 0.06000000000000005. */
export const tidy = (value: number): number => Number(value.toFixed(9))
