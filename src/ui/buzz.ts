/** What the hand feels when the ear is deaf with pumps: one pattern for each event, in ms on and off. */
const patterns = {
  key: [8],
  second: [50],
  saved: [20, 40, 20],
  warn: [60, 60, 60],
  act: [180, 90, 180],
  timerDone: [250, 120, 250, 120, 250],
  refused: [120],
} as const

export type Buzz = keyof typeof patterns

/** Not every phone can; where it cannot, shape and word say it alone. */
export const buzz = (event: Buzz): void => {
  if (typeof navigator.vibrate === 'function') navigator.vibrate([...patterns[event]])
}
