import { boxMean, softMean } from './blur.ts'
import type { Planes } from './crop.ts'
import { field, type Field } from './picture.ts'
import { inkIsPositive } from './polarity.ts'

/** What the box looks like once colour, shading and polarity are taken out. */
export interface Ink {
  /** About −0.5 (bare ground) to 2 (full ink), in units of the local deviation. */
  ink: Field
  /** The same without the division: shading stays, but so do true differences of strength, as between lit and unlit segments. */
  plain: Field
  /** The colour on that axis with nothing taken away but its sign: the more, the more ink. */
  shade: Field
  /** Deviation of the projected colour over the whole box, in steps of 0 to 255: how much there is to see at all. */
  contrast: number
  /** Mean brightness of the box, 0 to 255. */
  brightness: number
}

/**
 * Ink from colour: high-pass each colour, project on the axis along which the box varies most (a red digit on black and a black digit on
 * green both come out at full contrast, also under a red lamp), divide by the local deviation (glare and shadow go), and turn ink
 * positive. `reversed` takes the other polarity than the strokes tell.
 */
export const inkOf = (planes: Planes, reversed = false): Ink => {
  const { width, height } = planes.red
  const count = width * height
  const radius = Math.max(4, Math.round(height * 0.3))
  const high = [planes.red, planes.green, planes.blue].map((plane) => {
    const low = softMean(plane, radius)
    const out = field(width, height)
    for (let i = 0; i < count; i++) out.data[i] = plane.data[i]! - low.data[i]!
    return out
  })
  const [axisRed, axisGreen, axisBlue] = principalAxis(high)
  const grey = field(width, height)
  const square = field(width, height)
  const shade = field(width, height)
  let light = 0
  for (let i = 0; i < count; i++) {
    const value = axisRed * high[0]!.data[i]! + axisGreen * high[1]!.data[i]! + axisBlue * high[2]!.data[i]!
    grey.data[i] = value
    square.data[i] = value * value
    shade.data[i] = axisRed * planes.red.data[i]! + axisGreen * planes.green.data[i]! + axisBlue * planes.blue.data[i]!
    light += planes.red.data[i]! + planes.green.data[i]! + planes.blue.data[i]!
  }
  const contrast = innerDeviation(grey)
  // A running sum can end a hair below zero.
  const local = boxMean(square, radius)
  // A floor keeps flat corners from being blown up to the strength of the figures.
  const floor = Math.max(1e-3, 0.35 * contrast)
  const ink = field(width, height)
  for (let i = 0; i < count; i++) ink.data[i] = grey.data[i]! / (Math.sqrt(Math.max(0, local.data[i]!)) + floor)
  const sign = inkIsPositive(ink) !== reversed ? 1 : -1
  const strength = sign / Math.max(1e-3, contrast)
  for (let i = 0; i < count; i++) {
    ink.data[i]! *= sign
    grey.data[i]! *= strength
    shade.data[i]! *= sign
  }
  return { ink, plain: grey, shade, contrast, brightness: light / (3 * count) }
}

/** Root mean square without the outermost eighth, where the high-pass leaves an edge even on a plain shade. */
export const innerDeviation = ({ width, height, data }: Field): number => {
  const [beside, above] = [Math.round(width / 8), Math.round(height / 8)]
  let energy = 0
  let count = 0
  for (let y = above; y < height - above; y++)
    for (let x = beside; x < width - beside; x++) {
      energy += data[y * width + x]! ** 2
      count++
    }
  return Math.sqrt(energy / count)
}

/** First eigenvector of the covariance of three planes, by power iteration; grey (1,1,1)/√3 when nothing varies. */
const principalAxis = (planes: Field[]): [number, number, number] => {
  const [a, b, c] = [planes[0]!.data, planes[1]!.data, planes[2]!.data]
  let aa = 0
  let ab = 0
  let ac = 0
  let bb = 0
  let bc = 0
  let cc = 0
  for (let i = 0; i < a.length; i++) {
    const x = a[i]!
    const y = b[i]!
    const z = c[i]!
    aa += x * x
    ab += x * y
    ac += x * z
    bb += y * y
    bc += y * z
    cc += z * z
  }
  let axis: [number, number, number] = [0.577, 0.578, 0.577]
  for (let turn = 0; turn < 24; turn++) {
    const [x, y, z] = axis
    const next: [number, number, number] = [aa * x + ab * y + ac * z, ab * x + bb * y + bc * z, ac * x + bc * y + cc * z]
    const length = Math.hypot(...next)
    if (length === 0) return axis
    axis = [next[0] / length, next[1] / length, next[2] / length]
  }
  return axis
}
