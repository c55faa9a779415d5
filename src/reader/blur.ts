import { field, type Field } from './picture.ts'

/** Mean over a square of 2 × radius + 1 pixels a side, cut off at the borders; the cost does not depend on the radius. */
export const boxMean = (image: Field, radius: number): Field => vertical(horizontal(image, radius), radius)

/** Two means in a row: close to a Gaussian, without the square's corners. */
export const softMean = (image: Field, radius: number): Field => boxMean(boxMean(image, radius), radius)

const horizontal = (image: Field, radius: number): Field => {
  const { width, height, data } = image
  const out = field(width, height)
  for (let y = 0; y < height; y++) {
    const row = y * width
    let sum = 0
    for (let x = 0; x < Math.min(radius, width); x++) sum += data[row + x]!
    let count = Math.min(radius, width)
    for (let x = 0; x < width; x++) {
      if (x + radius < width) {
        sum += data[row + x + radius]!
        count++
      }
      if (x - radius - 1 >= 0) {
        sum -= data[row + x - radius - 1]!
        count--
      }
      out.data[row + x] = sum / count
    }
  }
  return out
}

const vertical = (image: Field, radius: number): Field => {
  const { width, height, data } = image
  const out = field(width, height)
  const sums = new Float64Array(width)
  let count = Math.min(radius, height)
  for (let y = 0; y < count; y++) for (let x = 0; x < width; x++) sums[x]! += data[y * width + x]!
  for (let y = 0; y < height; y++) {
    const entering = y + radius
    const leaving = y - radius - 1
    if (entering < height) {
      for (let x = 0; x < width; x++) sums[x]! += data[entering * width + x]!
      count++
    }
    if (leaving >= 0) {
      for (let x = 0; x < width; x++) sums[x]! -= data[leaving * width + x]!
      count--
    }
    for (let x = 0; x < width; x++) out.data[y * width + x] = sums[x]! / count
  }
  return out
}
