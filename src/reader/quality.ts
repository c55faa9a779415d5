import { boxMean } from './blur.ts'
import type { Ink } from './contrast.ts'
import type { Field } from './picture.ts'

/** Why a picture is not read at all. Sentences are made on the screens. */
export type ReadingRefusal =
  /** The guide box is not on the picture, or smaller than 8 pixels. */
  | 'boxOutside'
  | 'pictureTooLarge'
  | 'tooDark'
  /** Nothing in the box stands off its ground. */
  | 'empty'
  | 'blurred'
  /** Something is there, but no number: a word, an error sign, a pattern. */
  | 'noFigures'

/** 50 megapixels: beyond that a phone may not have the memory, and a meter never needs it. */
export const mostPixels = 50e6

// 280 drawn scenes lie at contrasts of 4.6 to 128, sharpness of 0.029 to 0.63 and grain of 0.024 to 0.28. Bare grounds with a camera's noise
// stay under a contrast of 2.8, or are all noise, with a grain near 1; figures blurred by a tenth of their height are under a sharpness of 0.029.
const leastContrast = 3
const leastSharpness = 0.025
const mostlyNoise = 0.6
const darkBrightness = 14

/** What can be told before the recogniser is asked. */
export const refusalOf = ({ contrast, brightness }: Ink, { sharpness, grain }: Texture): ReadingRefusal | null => {
  if (contrast < leastContrast || grain > mostlyNoise) return brightness < darkBrightness ? 'tooDark' : 'empty'
  return sharpness < leastSharpness ? 'blurred' : null
}

export interface Texture {
  /** Mean squared step between neighbours against mean square: near 0 for a soft shade, 2 × 2 for pure noise, whatever the contrast. */
  sharpness: number
  /** The same after a 3 × 3 mean, which takes noise down less than it takes down its steps: figures stay low, pure noise comes to 1. */
  grain: number
}

export const textureOf = (ink: Field): Texture => ({ sharpness: stepsOf(ink), grain: stepsOf(boxMean(ink, 1)) })

const stepsOf = ({ width, height, data }: Field): number => {
  let steps = 0
  let squares = 0
  for (let y = 1; y < height; y++)
    for (let x = 1; x < width; x++) {
      const at = y * width + x
      steps += (data[at]! - data[at - 1]!) ** 2 + (data[at]! - data[at - width]!) ** 2
      squares += data[at]! ** 2
    }
  return squares > 0 ? steps / squares : 0
}
