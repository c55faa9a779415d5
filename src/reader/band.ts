import type { Box, Field } from './picture.ts'

/**
 * The band of figures in a deskewed box. The guide box is centred on the figures, so the search starts in the middle and goes outwards
 * until the ink stops: rows first, then columns within those rows. Null when there is no ink in the middle or it never stops.
 */
export const bandOf = (ink: Field): Box | null => {
  const { width, height } = ink
  const rows = smoothed(rowInk(ink, Math.round(width * 0.1), Math.round(width * 0.9)), Math.max(1, Math.round(height * 0.02)))
  const middle = rows.slice(Math.round(height * 0.3), Math.round(height * 0.7))
  const usual = middle.reduce((sum, row) => sum + row, 0) / middle.length
  const vertical = spread(rows, 0.2 * usual, Math.max(2, Math.round(height * 0.05)))
  if (!vertical || vertical.last - vertical.first < height * 0.18) return null
  const bandHeight = vertical.last - vertical.first + 1
  const columns = smoothed(columnInk(ink, vertical.first, vertical.last), 1)
  const strong = [...columns].sort((a, b) => b - a)[Math.floor(columns.length * 0.15)] ?? 0
  // Low, since a minus inks only a twentieth of its columns. A narrow figure 1 leaves up to three quarters of a figure's height bare before it.
  const horizontal = spread(columns, 0.025 * strong, Math.round(bandHeight * 0.8))
  if (!horizontal || horizontal.last - horizontal.first < bandHeight * 0.08) return null
  return { x: horizontal.first, y: vertical.first, width: horizontal.last - horizontal.first + 1, height: bandHeight }
}

const rowInk = ({ width, height, data }: Field, from: number, to: number): Float32Array => {
  const sums = new Float32Array(height)
  for (let y = 0; y < height; y++) for (let x = from; x < to; x++) sums[y]! += clipped(data[y * width + x]!)
  return sums
}

const columnInk = ({ width, data }: Field, top: number, bottom: number): Float32Array => {
  const sums = new Float32Array(width)
  for (let y = top; y <= bottom; y++) for (let x = 0; x < width; x++) sums[x]! += clipped(data[y * width + x]!)
  return sums
}

const clipped = (value: number): number => (value < 0.35 ? 0 : Math.min(value, 1.5))

const smoothed = (values: Float32Array, radius: number): Float32Array =>
  values.map((_, at) => {
    let sum = 0
    let count = 0
    for (let i = Math.max(0, at - radius); i <= Math.min(values.length - 1, at + radius); i++) {
      sum += values[i]!
      count++
    }
    return sum / count
  })

/** From the strongest place near the middle outwards while the values stay over `threshold`, bridging gaps up to `gap`. */
const spread = (values: Float32Array, threshold: number, gap: number): { first: number; last: number } | null => {
  let start = -1
  for (let i = Math.round(values.length * 0.4); i < values.length * 0.6; i++) if (values[i]! > threshold && (start < 0 || values[i]! > values[start]!)) start = i
  if (start < 0) return null
  let first = start
  for (let i = start; i >= 0 && first - i <= gap; i--) if (values[i]! > threshold) first = i
  let last = start
  for (let i = start; i < values.length && i - last <= gap; i++) if (values[i]! > threshold) last = i
  return { first, last }
}
