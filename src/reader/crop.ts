import { field, type Box, type Field, type Pixels } from './picture.ts'

/**
 * Height of the working picture in pixels. Figures then stand 40 to 70 pixels high, a little above the 48 that the recogniser wants,
 * and the cost of a reading no longer depends on the camera.
 */
const workingHeight = 96
/** A box wider than this many heights is scaled by its width instead, which bounds the work. */
const widestRatio = 7

/** Red, green and blue of the box at working size, each 0 to 255. */
export interface Planes {
  red: Field
  green: Field
  blue: Field
  /** Working pixels for one pixel of the picture. */
  scale: number
}

/** Cuts the box out and scales it: mean over the covered area when it shrinks (so fine noise goes), linear when it grows. */
export const crop = (pixels: Pixels, box: Box): Planes => {
  const height = Math.max(16, Math.min(workingHeight, Math.round((workingHeight * widestRatio * box.height) / box.width)))
  const scale = height / box.height
  const width = Math.max(16, Math.round(box.width * scale))
  const red = field(width, height)
  const green = field(width, height)
  const blue = field(width, height)
  const columns = taps(width, box.width, box.x, pixels.width)
  const rows = taps(height, box.height, box.y, pixels.height)
  for (let y = 0; y < height; y++) {
    const row = rows[y]!
    for (let x = 0; x < width; x++) {
      const column = columns[x]!
      let r = 0
      let g = 0
      let b = 0
      for (let j = 0; j < row.weights.length; j++) {
        const base = (row.first + j) * pixels.width
        const rowWeight = row.weights[j]!
        for (let i = 0; i < column.weights.length; i++) {
          const weight = rowWeight * column.weights[i]!
          const at = (base + column.first + i) * 4
          r += weight * pixels.data[at]!
          g += weight * pixels.data[at + 1]!
          b += weight * pixels.data[at + 2]!
        }
      }
      const at = y * width + x
      red.data[at] = r
      green.data[at] = g
      blue.data[at] = b
    }
  }
  return { red, green, blue, scale }
}

interface Tap {
  first: number
  weights: number[]
}

/** For each target position, the source positions it is the weighted mean of. Weights sum to 1. */
const taps = (targets: number, sources: number, offset: number, limit: number): Tap[] => {
  const step = sources / targets
  const reach = Math.max(1, step)
  return Array.from({ length: targets }, (_, target) => {
    const centre = offset + (target + 0.5) * step - 0.5
    const first = Math.max(0, Math.ceil(centre - reach))
    const last = Math.min(limit - 1, Math.floor(centre + reach))
    const weights: number[] = []
    for (let source = first; source <= last; source++) weights.push(Math.max(0, 1 - Math.abs(source - centre) / reach) + 1e-6)
    const sum = weights.reduce((total, weight) => total + weight, 0)
    return { first, weights: weights.map((weight) => weight / sum) }
  })
}
