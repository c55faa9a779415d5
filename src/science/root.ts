/**
 * The root of a continuous function between two points where its signs differ. It cannot leave the bracket, so it cannot diverge;
 * at worst it halves the bracket at each call of `f`.
 *
 * Chandrupatla 1997, Adv. Eng. Softw. 28, 145: inverse quadratic interpolation where the three last points allow it, else bisection.
 * Throws an Error (a fault of the caller) when the signs do not differ.
 * @example bracketedRoot((x) => x * x - 2, { low: 0, high: 2, tolerance: 1e-12 }) // 1.41421356237…
 */
export const bracketedRoot = (f: (x: number) => number, { low, high, tolerance }: { low: number; high: number; tolerance: number }): number => {
  let a = high
  let fa = f(high)
  let b = low
  let fb = f(low)
  if (fa === 0) return a
  if (fb === 0) return b
  if (!(fa > 0 !== fb > 0)) throw new Error(`no sign change between ${low} (${fb}) and ${high} (${fa})`)
  let share = 0.5
  for (let turn = 0; turn < 200; turn++) {
    const x = a + share * (b - a)
    const fx = f(x)
    let c: number
    let fc: number
    if (fx > 0 === fa > 0) {
      c = a
      fc = fa
    } else {
      c = b
      fc = fb
      b = a
      fb = fa
    }
    a = x
    fa = fx
    const best = Math.abs(fa) < Math.abs(fb) ? a : b
    const span = Math.abs(b - a)
    const least = 2 * Number.EPSILON * Math.abs(best) + tolerance
    if (fx === 0 || span <= least) return best
    share = nextShare({ a, fa, b, fb, c, fc })
    const margin = Math.min(0.5, least / span)
    share = Math.min(1 - margin, Math.max(margin, share))
  }
  throw new Error('a bracket that should have closed did not')
}

const nextShare = ({ a, fa, b, fb, c, fc }: { a: number; fa: number; b: number; fb: number; c: number; fc: number }): number => {
  const xi = (a - b) / (c - b)
  const phi = (fa - fb) / (fc - fb)
  const quadratic = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
  if (!quadratic) return 0.5
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
}
