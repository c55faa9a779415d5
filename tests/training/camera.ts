import { createCanvas, loadImage, type Canvas } from '@napi-rs/canvas'
import type { Box, Pixels } from '../../src/reader/picture.ts'
import type { Random } from './random.ts'

/** What the light, the hand and the camera do to a drawn instrument. */
export interface Shot {
  turnRadians: number
  /** Perspective: change of scale per picture width, sideways and upwards. */
  tilt: { x: number; y: number }
  /** Picture pixels per drawn pixel. */
  scale: number
  blurPixels: number
  smear: { x: number; y: number }
  gain: number
  tint: [number, number, number]
  noise: number
  vignette: number
  jpegQuality: number
  shift: { x: number; y: number }
}

/** A shot suited to figures that will stand `figurePixels` high. */
export const shot = (random: Random, figurePixels: number, scale: number): Shot => {
  const isSmeared = random.chance(0.12)
  const isRedLamp = random.chance(0.07)
  const isDark = random.chance(0.12)
  const warmth = random.between(-0.14, 0.14)
  return {
    turnRadians: ((random.chance(0.55) ? random.between(-4, 4) : random.between(-12, 12)) * Math.PI) / 180,
    tilt: { x: random.between(-0.28, 0.28), y: random.between(-0.28, 0.28) },
    scale,
    blurPixels: figurePixels * (random.chance(0.7) ? random.between(0, 0.028) : random.between(0.02, 0.055)),
    smear: isSmeared ? { x: figurePixels * random.between(-0.09, 0.09), y: figurePixels * random.between(-0.07, 0.07) } : { x: 0, y: 0 },
    // No darker than a person can still read: what nobody reads has no right answer to train or score on.
    gain: isDark ? random.between(0.2, 0.45) : random.between(0.6, 1.15),
    tint: isRedLamp ? [1, random.between(0.04, 0.2), random.between(0.02, 0.12)] : [1 + warmth, 1, 1 - warmth],
    noise: isDark ? random.between(2, 6) : random.between(1, 7),
    vignette: random.between(0, 0.35),
    jpegQuality: random.whole(38, 92),
    shift: { x: random.between(-0.06, 0.06), y: random.between(-0.06, 0.06) },
  }
}

/** Takes the picture: `drawn` seen through the shot as a picture of `width` × `height`, and where `figures` (a box on the drawing) lies in it. */
export const takePicture = async (drawn: Canvas, figures: Box, width: number, height: number, how: Shot, random: Random): Promise<{ pixels: Pixels; box: Box }> => {
  const [centreX, centreY] = [figures.x + figures.width / 2, figures.y + figures.height / 2]
  const project = projection(how, centreX, centreY, width, height)
  const corners = [
    [figures.x, figures.y],
    [figures.x + figures.width, figures.y],
    [figures.x, figures.y + figures.height],
    [figures.x + figures.width, figures.y + figures.height],
  ].map(([x, y]) => project(x!, y!))
  const xs = corners.map((corner) => corner.x)
  const ys = corners.map((corner) => corner.y)
  const box = { x: Math.min(...xs), y: Math.min(...ys), width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) }
  let planes = warp(drawn, how, centreX, centreY, width, height)
  if (how.blurPixels > 0.25) planes = planes.map((plane) => gaussian(plane, width, height, how.blurPixels))
  if (Math.hypot(how.smear.x, how.smear.y) > 0.5) planes = planes.map((plane) => smeared(plane, width, height, how.smear))
  const pixels = await throughJpeg(expose(planes, width, height, how, random), how.jpegQuality)
  return { pixels, box }
}

/** From the drawing to the picture: shift to the figures, turn, scale, divide by the perspective. */
const projection = (how: Shot, centreX: number, centreY: number, width: number, height: number) => {
  const [cosine, sine] = [Math.cos(how.turnRadians), Math.sin(how.turnRadians)]
  return (x: number, y: number): { x: number; y: number } => {
    const [dx, dy] = [(x - centreX) * how.scale, (y - centreY) * how.scale]
    const depth = 1 + (how.tilt.x * dx) / width + (how.tilt.y * dy) / width
    return { x: width * (0.5 + how.shift.x) + (cosine * dx - sine * dy) / depth, y: height * (0.5 + how.shift.y) + (sine * dx + cosine * dy) / depth }
  }
}

const warp = (drawn: Canvas, how: Shot, centreX: number, centreY: number, width: number, height: number): Float32Array[] => {
  const source = drawn.getContext('2d').getImageData(0, 0, drawn.width, drawn.height).data
  const planes = [0, 1, 2].map(() => new Float32Array(width * height))
  const [cosine, sine] = [Math.cos(how.turnRadians), Math.sin(how.turnRadians)]
  const [red, green, blue] = [planes[0]!, planes[1]!, planes[2]!]
  // The canvas answers its size through native code, too slow for every pixel.
  const [lastX, lastY, stride] = [drawn.width - 1.001, drawn.height - 1.001, drawn.width * 4]
  for (let y = 0; y < height; y++) {
    const oy = y + 0.5 - height * (0.5 + how.shift.y)
    for (let x = 0; x < width; x++) {
      // The inverse of `projection`: with p = turned-back offset, d = p·(1 + t·d) solves to d = p / (1 − t·p).
      const ox = x + 0.5 - width * (0.5 + how.shift.x)
      const px = cosine * ox + sine * oy
      const py = cosine * oy - sine * ox
      const reach = how.scale * (1 - (how.tilt.x * px + how.tilt.y * py) / width)
      const sourceX = mirrored(centreX + px / reach - 0.5, lastX)
      const sourceY = mirrored(centreY + py / reach - 0.5, lastY)
      const left = Math.floor(sourceX)
      const top = Math.floor(sourceY)
      const right = sourceX - left
      const down = sourceY - top
      const at = top * stride + left * 4
      const to = y * width + x
      const nw = (1 - right) * (1 - down)
      const ne = right * (1 - down)
      const sw = (1 - right) * down
      const se = right * down
      red[to] = source[at]! * nw + source[at + 4]! * ne + source[at + stride]! * sw + source[at + stride + 4]! * se
      green[to] = source[at + 1]! * nw + source[at + 5]! * ne + source[at + stride + 1]! * sw + source[at + stride + 5]! * se
      blue[to] = source[at + 2]! * nw + source[at + 6]! * ne + source[at + stride + 2]! * sw + source[at + stride + 6]! * se
    }
  }
  return planes
}

/** Beyond its edge a drawing goes on as its mirror image: drawing out the edge's last pixels would put lines like minuses beside the figures. */
const mirrored = (at: number, last: number): number => Math.max(0, Math.min(last, at < 0 ? -at : at > last ? 2 * last - at : at))

const gaussian = (plane: Float32Array, width: number, height: number, sigma: number): Float32Array => {
  const reach = Math.ceil(sigma * 2.5)
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-((i - reach) ** 2) / (2 * sigma * sigma)))
  const sum = weights.reduce((total, weight) => total + weight, 0)
  weights.forEach((weight, i) => (weights[i] = weight / sum))
  const across = new Float32Array(plane.length)
  const out = new Float32Array(plane.length)
  const padded = new Float32Array(width + 2 * reach)
  for (let y = 0; y < height; y++) {
    const row = y * width
    for (let x = 0; x < padded.length; x++) padded[x] = plane[row + Math.min(width - 1, Math.max(0, x - reach))]!
    // Four sums at a time, since each waits for its own last addition.
    let x = 0
    for (; x + 3 < width; x += 4) {
      let [a, b, c, d] = [0, 0, 0, 0]
      for (let i = 0; i < weights.length; i++) {
        const weight = weights[i]!
        a += weight * padded[x + i]!
        b += weight * padded[x + i + 1]!
        c += weight * padded[x + i + 2]!
        d += weight * padded[x + i + 3]!
      }
      across[row + x] = a
      across[row + x + 1] = b
      across[row + x + 2] = c
      across[row + x + 3] = d
    }
    for (; x < width; x++) {
      let total = 0
      for (let i = 0; i < weights.length; i++) total += weights[i]! * padded[x + i]!
      across[row + x] = total
    }
  }
  for (let y = 0; y < height; y++)
    for (let i = 0; i < weights.length; i++) {
      const from = Math.min(height - 1, Math.max(0, y + i - reach)) * width
      const weight = weights[i]!
      for (let x = 0; x < width; x++) out[y * width + x]! += weight * across[from + x]!
    }
  return out
}

const smeared = (plane: Float32Array, width: number, height: number, smear: { x: number; y: number }): Float32Array => {
  const steps = Math.max(2, Math.ceil(Math.hypot(smear.x, smear.y)))
  const out = new Float32Array(plane.length)
  for (let step = 0; step < steps; step++) {
    const [dx, dy] = [Math.round(smear.x * (step / (steps - 1) - 0.5)), Math.round(smear.y * (step / (steps - 1) - 0.5))]
    for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) out[y * width + x]! += plane[Math.min(height - 1, Math.max(0, y + dy)) * width + Math.min(width - 1, Math.max(0, x + dx))]! / steps
  }
  return out
}

const expose = (planes: Float32Array[], width: number, height: number, how: Shot, random: Random): Pixels => {
  const data = new Uint8ClampedArray(width * height * 4)
  const { gain, tint, vignette } = how
  for (let plane = 0; plane < 3; plane++) {
    const source = planes[plane]!
    const strength = gain * tint[plane]!
    for (let y = 0; y < height; y++) {
      const rowEdge = 2 * (y / height - 0.5) ** 2
      for (let x = 0; x < width; x++) {
        const light = strength * (1 - vignette * (rowEdge + 2 * (x / width - 0.5) ** 2))
        // The sum of two even numbers is near enough to a bell for sensor noise.
        const grain = (random.unit() + random.unit() - 1) * 2.45 * how.noise
        data[(y * width + x) * 4 + plane] = source[y * width + x]! * light + grain
      }
    }
  }
  for (let at = 3; at < data.length; at += 4) data[at] = 255
  return { width, height, data }
}

const throughJpeg = async ({ width, height, data }: Pixels, quality: number): Promise<Pixels> => {
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  const image = context.createImageData(width, height)
  image.data.set(data)
  context.putImageData(image, 0, 0)
  context.drawImage(await loadImage(canvas.toBuffer('image/jpeg', quality)), 0, 0)
  return { width, height, data: new Uint8ClampedArray(context.getImageData(0, 0, width, height).data) }
}
