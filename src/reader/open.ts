import { field, type Field } from './picture.ts'

/** The picture without its bright parts that are thinner than 2 × radius + 1 pixels. */
export const opened = (image: Field, radius: number): Field => extreme(extreme(image, radius, -1), radius, 1)

/** The picture without its dark parts that are thinner than that. */
export const closed = (image: Field, radius: number): Field => extreme(extreme(image, radius, 1), radius, -1)

/** Highest (`sign` 1) or lowest (−1) value in a square about each pixel. */
const extreme = (image: Field, radius: number, sign: 1 | -1): Field => {
  const { width, height } = image
  const across = field(width, height)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let best = -Infinity
      for (let i = Math.max(0, x - radius); i <= Math.min(width - 1, x + radius); i++) best = Math.max(best, sign * image.data[y * width + i]!)
      across.data[y * width + x] = best
    }
  const out = field(width, height)
  for (let y = 0; y < height; y++) {
    const [first, last] = [Math.max(0, y - radius), Math.min(height - 1, y + radius)]
    for (let x = 0; x < width; x++) {
      let best = -Infinity
      for (let i = first; i <= last; i++) best = Math.max(best, across.data[i * width + x]!)
      out.data[y * width + x] = sign * best
    }
  }
  return out
}
