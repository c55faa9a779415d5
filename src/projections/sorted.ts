/** First index whose item does not come before `key`. The list is in the order of `compare`. */
export const lowerBound = <T, K>(list: readonly T[], key: K, compare: (item: T, key: K) => number): number => {
  let low = 0
  let high = list.length
  while (low < high) {
    const middle = (low + high) >>> 1
    if (compare(list[middle]!, key) < 0) low = middle + 1
    else high = middle
  }
  return low
}

/** Up to here each item is put in by moving up what comes after it; above, the two sorted runs are merged by one sort. */
const few = 8

/** Puts items into a sorted list. The common case, items that all come after the list, costs nothing but themselves. */
export const insertSorted = <T>(list: T[], items: readonly T[], compare: (a: T, b: T) => number): void => {
  const isSorted = items.every((item, index) => index === 0 || compare(items[index - 1]!, item) <= 0)
  const sorted = isSorted ? items : items.toSorted(compare)
  const last = list.at(-1)
  if (!last || !sorted[0] || compare(last, sorted[0]) <= 0) for (const item of sorted) list.push(item)
  else if (sorted.length <= few) for (const item of sorted) list.splice(lowerBound(list, item, compare), 0, item)
  else {
    for (const item of sorted) list.push(item)
    list.sort(compare)
  }
}
