import type { Field } from './picture.ts'

/** Fainter than this is ground; figures and frames are well above. */
const inked = 0.45
/** What a cut-out's ground comes to, in units of the local deviation; rounded as a field keeps it, since it also marks what was reached. */
const ground = Math.fround(-0.4)

/**
 * The ink that does not hang together with the border of the box: without the frame and the dark case, which a recogniser takes for figures at either end.
 * A figure that touches the border goes with them, so this is one opinion among others.
 */
export const clearOfBorder = ({ width, height, data }: Field): Field => {
  const out = data.slice()
  const waiting: number[] = []
  const reach = (at: number): void => {
    if (data[at]! <= inked || out[at] === ground) return
    out[at] = ground
    waiting.push(at)
  }
  for (let x = 0; x < width; x++) {
    reach(x)
    reach((height - 1) * width + x)
  }
  for (let y = 0; y < height; y++) {
    reach(y * width)
    reach(y * width + width - 1)
  }
  for (let at = waiting.pop(); at !== undefined; at = waiting.pop()) {
    const x = at % width
    if (x > 0) reach(at - 1)
    if (x < width - 1) reach(at + 1)
    if (at >= width) reach(at - width)
    if (at < width * (height - 1)) reach(at + width)
  }
  return { width, height, data: out }
}
