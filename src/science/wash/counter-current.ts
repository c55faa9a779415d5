/**
 * Counter-current washing in N tanks, in a steady state: clean water enters the last tank and flows towards the first, film
 * goes the other way and carries liquid from tank to tank.
 *
 * C_N ÷ C_0 = 1 ÷ (1 + r + r² + … + r^N), r = wash flow ÷ carry-over (both per area of film)
 *
 * which is (r − 1) ÷ (r^(N+1) − 1) (Kremser form, from memory) written so that r = 1 is no special case. It follows from the
 * balance of each tank, r·C(n+1) + C(n−1) = (1 + r)·C(n) with C(N+1) = 0. Neglected: the time that salt needs to leave the
 * gelatine and the base, so a real wash is never better than this; mixing is taken as ideal.
 */
export const carriedShare = (wash: { stages: number; ratio: number }): number => {
  let sum = 1
  for (let stage = 0; stage < wash.stages; stage++) sum = sum * wash.ratio + 1
  return 1 / sum
}

/**
 * The ratio r that leaves `share` (0 < share ≤ 1) of the concentration. The sum 1 + r + … + r^N rises and is convex for r ≥ 0,
 * so Newton's steps from above come down to the root and cannot pass it; r^N alone gives a start above it.
 */
export const ratioForShare = (wash: { stages: number; share: number }): number => {
  const wanted = 1 / wash.share
  let ratio = wanted ** (1 / wash.stages)
  for (let step = 0; step < 200; step++) {
    let sum = 1
    let slope = 0
    for (let stage = 0; stage < wash.stages; stage++) {
      slope = slope * ratio + sum
      sum = sum * ratio + 1
    }
    const next = Math.max(0, ratio - (sum - wanted) / slope)
    if (!(next < ratio)) return ratio
    ratio = next
  }
  return ratio
}
