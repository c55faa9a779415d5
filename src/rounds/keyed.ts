import { above, below } from '../science/decimal.ts'

/** What the pad must give: as many decimals as the instrument shows, within its range. */
export interface Expected {
  decimals: number
  low: number
  high: number
}

export type KeyedProblem =
  | { code: 'empty' }
  | { code: 'twoPoints' }
  | { code: 'notANumber' }
  | { code: 'tooManyDecimals'; decimals: number }
  /** `slip`: the same figures with the point moved, which the instrument could show. */
  | { code: 'outOfRange'; low: number; high: number; slip?: string }

export type Keyed = { ok: true; value: number; keyed: string } | { ok: false; problem: KeyedProblem }

/**
 * Reads what was keyed. A comma is a point; `8.60` stays `8.60`. What the instrument cannot show is refused here: whether the bath is
 * right is judged later, and never refuses.
 */
export const parseKeyed = (text: string, { decimals, low, high }: Expected): Keyed => {
  const plain = text.trim().replace(/−/g, '-').replace(/,/g, '.')
  const refuse = (problem: KeyedProblem): Keyed => ({ ok: false, problem })
  if (plain === '' || plain === '-' || plain === '.' || plain === '-.') return refuse({ code: 'empty' })
  if ((plain.match(/\./g)?.length ?? 0) > 1) return refuse({ code: 'twoPoints' })
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(plain)) return refuse({ code: 'notANumber' })
  const fraction = plain.split('.')[1] ?? ''
  if (fraction.length > decimals) return refuse({ code: 'tooManyDecimals', decimals })
  const value = Number(plain)
  if (below(value, low) || above(value, high)) {
    const slip = slipOf(plain, { decimals, low, high })
    return refuse({ code: 'outOfRange', low, high, ...(slip === undefined ? {} : { slip }) })
  }
  return { ok: true, value, keyed: plain.startsWith('.') ? `0${plain}` : plain.endsWith('.') ? plain.slice(0, -1) : plain }
}

/** `492` for 4.92: the point forgotten, or set one place off. */
const slipOf = (plain: string, { decimals, low, high }: Expected): string | undefined => {
  for (const shift of [0.1, 10, 0.01, 100, 0.001, 1000]) {
    const moved = Number((Number(plain) * shift).toPrecision(12))
    if (!below(moved, low) && !above(moved, high) && Number(moved.toFixed(decimals)) === moved) return moved.toFixed(decimals)
  }
  return undefined
}
