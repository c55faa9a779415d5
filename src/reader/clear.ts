import { groundLevel } from './line.ts'
import type { Field } from './picture.ts'

/** Fainter than this is ground; figures and frames are well above. */
const inked = 0.45
/** Rounded as a field keeps it, since it also marks what was reached. */
const ground = Math.fround(groundLevel)
/** A figure is at least so high, as a share of the box; a unit is lower. */
const leastFigure = 0.4
/** And at most so wide, as a share of the box's height. */
const widestFigure = 0.8

/**
 * The ink that does not hang together with the border of the box: without the frame and the dark case, which a recogniser takes for figures at either end.
 * What hangs on the left or right border alone and has a figure's measures stays: a figure in a box put close. Any other figure that touches
 * the border goes with them, so this is one opinion among others.
 */
export const clearOfBorder = ({ width, height, data }: Field): Field => {
  const out = data.slice()
  /** Clears what hangs together with the places given; tells which it cleared. */
  const clear = (places: Iterable<number>): number[] => {
    const cleared: number[] = []
    const reach = (at: number): void => {
      if (out[at]! <= inked) return
      out[at] = ground
      cleared.push(at)
    }
    for (const at of places) reach(at)
    for (let next = 0; next < cleared.length; next++) {
      const at = cleared[next]!
      const x = at % width
      if (x > 0) reach(at - 1)
      if (x < width - 1) reach(at + 1)
      if (at >= width) reach(at - width)
      if (at < width * (height - 1)) reach(at + width)
    }
    return cleared
  }
  const row = (y: number): number[] => Array.from({ length: width }, (_, x) => y * width + x)
  const column = (x: number): number[] => Array.from({ length: height }, (_, y) => y * width + x)
  clear([...row(0), ...row(height - 1)])
  for (const side of [column(0), column(width - 1)]) {
    const cleared = clear(side)
    const rows = cleared.map((at) => Math.floor(at / width))
    const columns = cleared.map((at) => at % width)
    const isFigure = extent(rows) >= leastFigure * height && extent(columns) <= widestFigure * height
    if (isFigure) for (const at of cleared) out[at] = data[at]!
  }
  return { width, height, data: out }
}

const extent = (places: readonly number[]): number => {
  let [least, most] = [Infinity, -Infinity]
  for (const place of places) [least, most] = [Math.min(least, place), Math.max(most, place)]
  return most - least + 1
}
