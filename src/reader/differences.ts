/**
 * Places in `text` at which `other` differs, by the shortest edit from one to the other. A character that `other` has besides is told at
 * the place before which it would stand, so a lost point is marked on the figure after it; at the end, on the last figure.
 */
export const differences = (text: string, other: string): number[] => {
  const columns = other.length + 1
  const cost = new Uint16Array((text.length + 1) * columns)
  for (let i = 0; i <= text.length; i++) cost[i * columns] = i
  for (let j = 0; j <= other.length; j++) cost[j] = j
  for (let i = 1; i <= text.length; i++)
    for (let j = 1; j <= other.length; j++)
      cost[i * columns + j] = Math.min(
        cost[(i - 1) * columns + j]! + 1,
        cost[i * columns + j - 1]! + 1,
        cost[(i - 1) * columns + j - 1]! + (text[i - 1] === other[j - 1] ? 0 : 1),
      )
  const places = new Set<number>()
  let [i, j] = [text.length, other.length]
  while (i > 0 || j > 0) {
    const here = cost[i * columns + j]!
    if (i > 0 && j > 0 && here === cost[(i - 1) * columns + j - 1]! + (text[i - 1] === other[j - 1] ? 0 : 1)) {
      if (text[i - 1] !== other[j - 1]) places.add(i - 1)
      i--
      j--
    } else if (i > 0 && here === cost[(i - 1) * columns + j]! + 1) {
      places.add(i - 1)
      i--
    } else {
      places.add(Math.min(i, Math.max(0, text.length - 1)))
      j--
    }
  }
  return [...places].sort((a, b) => a - b)
}
