/** First index at or after an instant; `times` rise. */
export const indexAt = (times: ArrayLike<number>, time: number): number => {
  let low = 0
  let high = times.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (times[middle]! < time) low = middle + 1
    else high = middle
  }
  return low
}

interface ThinAsked {
  times: ArrayLike<number>
  /** NaN where there is nothing to draw. */
  values: ArrayLike<number>
  from: number
  to: number
  columns: number
}

/**
 * Which points a line needs so that it looks the same as with all of them: of each column of pixels the first, the lowest, the highest and the last
 * (the M4 aggregation, from memory). No outlier is lost, whatever the zoom; a mean of each column would hide them. One point beyond each edge is
 * kept, so that the line runs on out of the picture. Indexes, in order.
 */
export const thin = ({ times, values, from, to, columns }: ThinAsked): number[] => {
  const first = Math.max(0, indexAt(times, from) - 1)
  const end = Math.min(times.length, indexAt(times, to) + 1)
  const kept: number[] = []
  if (end - first <= columns * 4) {
    for (let index = first; index < end; index++) kept.push(index)
    return kept
  }
  const width = (to - from) / columns
  let index = first
  while (index < end) {
    const border = from + (Math.floor((times[index]! - from) / width) + 1) * width
    const opening = index
    let lowest = -1
    let highest = -1
    for (; index < end && (times[index]! < border || index === opening); index++) {
      const value = values[index]!
      if (Number.isNaN(value)) continue
      if (lowest < 0 || value < values[lowest]!) lowest = index
      if (highest < 0 || value > values[highest]!) highest = index
    }
    const [a, b] = lowest < highest ? [lowest, highest] : [highest, lowest]
    const closing = index - 1
    kept.push(opening)
    if (a > opening && a < closing) kept.push(a)
    if (b > opening && b < closing && b !== a) kept.push(b)
    if (closing > opening) kept.push(closing)
  }
  return kept
}
