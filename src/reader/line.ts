import type { Box, Field, GrayImage } from './picture.ts'

/** The recogniser was trained on lines of this height; tesseract would scale any other to it, less well. */
export const lineHeight = 48
/** Longer than twelve figures is no display; bounds the work. */
const longestLine = 640

/** Part of an ink field as a line image: ink dark on light, scaled to the height the recogniser wants. Outside the field is ground. */
export const lineOf = (ink: Field, part: Box): GrayImage => {
  const scale = lineHeight / part.height
  const width = Math.max(lineHeight, Math.min(longestLine, Math.round(part.width * scale)))
  const line: GrayImage = { width, height: lineHeight, data: new Uint8Array(width * lineHeight) }
  const values = new Float32Array(width * lineHeight)
  const stepX = part.width / width
  const stepY = part.height / lineHeight
  for (let y = 0; y < lineHeight; y++) for (let x = 0; x < width; x++) values[y * width + x] = sample(ink, part.x + (x + 0.5) * stepX - 0.5, part.y + (y + 0.5) * stepY - 0.5, stepX, stepY)
  const sorted = values.slice().sort()
  const ground = sorted[Math.floor(sorted.length * 0.2)]!
  const full = Math.max(sorted[Math.floor(sorted.length * 0.97)]!, ground + 0.3)
  for (let i = 0; i < values.length; i++) line.data[i] = Math.round(235 - 215 * Math.min(1.08, Math.max(-0.09, (values[i]! - ground) / (full - ground))))
  return line
}

/** Linear between pixels, or the mean of a 2 × 2 raster over the covered area when the line is smaller than the field. */
const sample = (ink: Field, x: number, y: number, stepX: number, stepY: number): number => {
  if (stepX <= 1.2 && stepY <= 1.2) return at(ink, x, y)
  const [right, down] = [stepX / 4, stepY / 4]
  return (at(ink, x - right, y - down) + at(ink, x + right, y - down) + at(ink, x - right, y + down) + at(ink, x + right, y + down)) / 4
}

/** Ink of bare ground, and of what lies outside a field. */
export const groundLevel = -0.4

const at = (ink: Field, x: number, y: number): number => {
  const left = Math.floor(x)
  const top = Math.floor(y)
  if (left < -1 || top < -1 || left >= ink.width || top >= ink.height) return groundLevel
  const right = x - left
  const down = y - top
  return (pixel(ink, left, top) * (1 - right) + pixel(ink, left + 1, top) * right) * (1 - down) + (pixel(ink, left, top + 1) * (1 - right) + pixel(ink, left + 1, top + 1) * right) * down
}

const pixel = ({ width, height, data }: Field, column: number, row: number): number => (column < 0 || row < 0 || column >= width || row >= height ? groundLevel : data[row * width + column]!)
