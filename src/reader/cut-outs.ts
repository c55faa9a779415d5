import { boxMean } from './blur.ts'
import { bandOf } from './band.ts'
import { clearOfBorder } from './clear.ts'
import { inkOf, type Ink } from './contrast.ts'
import { crop } from './crop.ts'
import { skewOf } from './deskew.ts'
import { lineOf } from './line.ts'
import type { Box, Field, GrayImage, Pixels } from './picture.ts'
import { textureOf, type Texture } from './quality.ts'
import { turned } from './turn.ts'

/**
 * The ways a box is cut before it is read. The readings come from `readCuts`, chosen on the validation scenes: they fail differently, which is what makes
 * their agreement worth something. Where one of them dissents, `decidingCut` is asked too.
 */
export type CutName = 'band' | 'level' | 'raw' | 'plainBand' | 'middle' | 'clearBand' | 'clearMiddle'
export const readCuts = ['raw', 'plainBand', 'middle', 'clearBand', 'clearMiddle'] as const satisfies readonly CutName[]
export const decidingCut: CutName = 'level'

export interface CutOuts extends Ink {
  /** Ink turned level, and the band of figures in it when one was found. */
  level: Field
  band: Box | null
  skewRadians: number
  texture: Texture
  /** Cut when asked for: most readings need four of them. */
  line(name: CutName): GrayImage
}

/** Above this sharpness, most of what is sharp is noise and is smoothed away. */
const grainy = 0.4

/** From a checked box on a picture to its line images. */
export const cutOuts = (pixels: Pixels, box: Box): CutOuts => {
  const found = inkOf(crop(pixels, box))
  const texture = textureOf(found.ink)
  const [ink, plain] = texture.sharpness > grainy ? [boxMean(found.ink, 1), boxMean(found.plain, 1)] : [found.ink, found.plain]
  const skewRadians = skewOf(ink)
  const [level, plainLevel] = Math.abs(skewRadians) < 0.004 ? [ink, plain] : [turned(ink, skewRadians), turned(plain, skewRadians)]
  const clear = clearOfBorder(level)
  const band = bandOf(level)
  const whole: Box = { x: 0, y: 0, width: ink.width, height: ink.height }
  // Where the figures stand in a box that a person has put about them, should no band be found.
  const middle = within(whole, { beside: 0.16, above: 0.18 })
  const lines: Record<CutName, () => GrayImage> = {
    band: () => lineOf(level, band ? withMargins(band) : within(whole, { beside: 0.06, above: 0.12 })),
    level: () => lineOf(level, whole),
    raw: () => lineOf(plain, within(whole, { beside: 0.03, above: 0.06 })),
    plainBand: () => lineOf(plainLevel, withMargins(band ?? middle)),
    middle: () => lineOf(level, reaching(within(whole, { beside: 0.1, above: 0.12 }), band, whole)),
    clearBand: () => lineOf(clear, withMargins(bandOf(clear) ?? band ?? middle)),
    clearMiddle: () => lineOf(clear, reaching(within(whole, { beside: 0.05, above: 0.08 }), band, whole)),
  }
  return {
    ...found,
    ink,
    plain,
    texture,
    level,
    band,
    skewRadians,
    line: (name) => lines[name](),
  }
}

/** A part of the box, grown to hold the band: about figures that fill the box it would cost the first and the last of them. */
const reaching = (part: Box, band: Box | null, whole: Box): Box => {
  if (!band) return part
  const margin = band.height * 0.1
  const x = Math.min(part.x, Math.max(0, band.x - margin))
  const y = Math.min(part.y, Math.max(0, band.y - margin))
  const right = Math.max(part.x + part.width, Math.min(whole.width, band.x + band.width + margin))
  const foot = Math.max(part.y + part.height, Math.min(whole.height, band.y + band.height + margin))
  return { x, y, width: right - x, height: foot - y }
}

const withMargins = (band: Box): Box => {
  const above = band.height * 0.13
  const beside = band.height * 0.4
  return { x: band.x - beside, y: band.y - above, width: band.width + 2 * beside, height: band.height + 2 * above }
}

/** The middle of the box: stands in for a band that was not found, and keeps the raw cut from being the level one when nothing leans. */
const within = (whole: Box, share: { beside: number; above: number }): Box => ({
  x: whole.width * share.beside,
  y: whole.height * share.above,
  width: whole.width * (1 - 2 * share.beside),
  height: whole.height * (1 - 2 * share.above),
})
