/** Made of seven segments, or of anything else: dots, print. */
export type DisplayKind = 'segments' | 'other'

/** What the check knows about its reading before it is taken. */
export interface Expectation {
  minimum: number
  maximum: number
  /** Decimal places that the instrument shows, when it always shows the same. */
  decimals?: number
  /** What the instrument's display is made of, as told by an earlier reading. */
  kind?: DisplayKind
  /** Last readings of the same check, any order. */
  recent?: readonly number[]
}

export type Misfit = 'outOfRange' | 'wrongDecimals' | 'unlikeRecent'

/** Fewer readings say nothing about what is usual. */
const fewestRecent = 3

/** In what ways a number read does not fit; none makes it wrong, each makes a person look. */
export const misfits = (text: string, { minimum, maximum, decimals, recent }: Expectation): Misfit[] => {
  const found: Misfit[] = []
  const value = Number(text)
  if (value < minimum || value > maximum) found.push('outOfRange')
  const shown = text.includes('.') ? text.length - text.indexOf('.') - 1 : 0
  if (decimals !== undefined && shown !== decimals) found.push('wrongDecimals')
  if (recent && recent.length >= fewestRecent) {
    const centre = median(recent)
    const usual = 1.4826 * median(recent.map((one) => Math.abs(one - centre)))
    // Six robust deviations, and never less than a tenth of the range: a steady bath must not make every honest change suspicious.
    if (Math.abs(value - centre) > Math.max(6 * usual, 0.1 * (maximum - minimum))) found.push('unlikeRecent')
  }
  return found
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2
}
