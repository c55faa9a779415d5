import { boxMean } from './blur.ts'
import { innerDeviation } from './contrast.ts'
import { groundLevel } from './line.ts'
import { opened } from './open.ts'
import { field, type Field } from './picture.ts'

/** Half the width, as a share of the box's height, up to which something is a stroke: the figures' boldest are within it, glare, shadow and case beyond. */
const halfStroke = 0.1

/**
 * Only what is thin, as strokes are: a white top-hat of the shade. A spot of glare, a shadow's edge and the dark case go whole, where a high-pass leaves a blot of them.
 * Not divided by the local deviation, which would lift what is left of them to the strength of figures: measured, that cost half of the gain.
 */
export const strokesOf = (shade: Field): Field => {
  const smooth = boxMean(shade, 1)
  const ground = opened(smooth, Math.max(2, Math.round(shade.height * halfStroke)))
  const out = field(shade.width, shade.height)
  for (let i = 0; i < out.data.length; i++) out.data[i] = smooth.data[i]! - ground.data[i]!
  const deviation = Math.max(1e-3, innerDeviation(out))
  for (let i = 0; i < out.data.length; i++) out.data[i] = out.data[i]! / deviation + groundLevel
  return out
}
