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

// Drawn scenes that can be read lie at contrasts of 5.6 to 127 and sharpness of 0.035 to 1.3 (140 of them, 1 % of either end beyond);
// unlit or bare pictures with sensor noise at contrasts under 2.8 or sharpness over 1.5; figures blurred by a tenth of their height under 0.029.
const leastContrast = 3
const leastSharpness = 0.025
const mostlyNoise = 1.5
const darkBrightness = 14

/** What can be told before the recogniser is asked. */
export const refusalOf = ({ contrast, brightness }: Ink, sharpness: number): ReadingRefusal | null => {
  if (contrast < leastContrast || sharpness > mostlyNoise) return brightness < darkBrightness ? 'tooDark' : 'empty'
  return sharpness < leastSharpness ? 'blurred' : null
}

/**
 * How sharp the ink is, whatever its contrast: mean squared step between neighbours against mean square. 2 × 2 for pure noise, near 0
 * for a soft shade.
 */
export const sharpnessOf = ({ width, height, data }: Field): number => {
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
