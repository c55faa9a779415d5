import { boxMean } from './blur.ts'
import { bandOf } from './band.ts'
import { clearOfBorder } from './clear.ts'
import { inkOf, type Ink } from './contrast.ts'
import { crop } from './crop.ts'
import { skewOf } from './deskew.ts'
import { lineOf } from './line.ts'
import type { Box, Field, GrayImage, Pixels } from './picture.ts'
import { textureOf, type Texture } from './quality.ts'
import { strokesOf } from './strokes.ts'
import { turned } from './turn.ts'

/**
 * The ways a box is cut before it is read. The readings come from `readCuts`, chosen on the validation scenes: they fail differently, which is what makes
 * their agreement worth something. Where one of them dissents, `decidingCut` is asked too.
 */
export type CutName = 'band' | 'level' | 'raw' | 'plainBand' | 'clearBand' | 'strokeBand' | 'strokeMiddle' | 'strokeWide'
export const readCuts = ['raw', 'clearBand', 'strokeBand', 'strokeMiddle', 'strokeWide'] as const satisfies readonly CutName[]
export const decidingCut: CutName = 'plainBand'

export interface CutOuts extends Ink {
  /** Ink turned level, and the band of figures in it when one was found. */
  level: Field
  band: Box | null
  /** Only the strokes, turned level, without what hangs on the border; and their band. */
  strokes: Field
  strokeBand: Box | null
  skewRadians: number
  texture: Texture
  /** Cut when asked for: most readings need four of them. */
  line(name: CutName): GrayImage
}

/** Above this sharpness, most of what is sharp is noise and is smoothed away. */
const grainy = 0.4

/** From a checked box on a picture to its line images; `reversed` where the polarity was told wrongly. */
export const cutOuts = (pixels: Pixels, box: Box, reversed = false): CutOuts => {
  const found = inkOf(crop(pixels, box), reversed)
  const texture = textureOf(found.ink)
  const [ink, plain] = texture.sharpness > grainy ? [boxMean(found.ink, 1), boxMean(found.plain, 1)] : [found.ink, found.plain]
  const skewRadians = skewOf(ink)
  const levelled = (image: Field): Field => (Math.abs(skewRadians) < 0.004 ? image : turned(image, skewRadians))
  const level = levelled(ink)
  const band = bandOf(level)
  const allStrokes = strokesOf(found.shade)
  // Cleared before it is turned, while the box's border is still the picture's.
  const strokes = levelled(clearOfBorder(allStrokes))
  const strokeBand = bandOf(strokes)
  const stroked = strokeBand ?? band
  const whole: Box = { x: 0, y: 0, width: ink.width, height: ink.height }
  // Where the figures stand in a box that a person has put about them, should no band be found.
  const middle = within(whole, { beside: 0.16, above: 0.18 })
  const lines: Record<CutName, () => GrayImage> = {
    band: () => lineOf(level, band ? withMargins(band) : within(whole, { beside: 0.06, above: 0.12 })),
    level: () => lineOf(level, whole),
    raw: () => lineOf(plain, within(whole, { beside: 0.03, above: 0.06 })),
    plainBand: () => lineOf(levelled(plain), withMargins(band ?? middle)),
    clearBand: () => {
      const clear = clearOfBorder(level)
      return lineOf(clear, withMargins(bandOf(clear) ?? band ?? middle))
    },
    strokeBand: () => lineOf(strokes, withMargins(stroked ?? middle)),
    strokeMiddle: () => lineOf(levelled(allStrokes), reaching(within(whole, { beside: 0.1, above: 0.12 }), stroked, whole)),
    strokeWide: () => lineOf(strokes, withMargins(stroked ?? middle, { above: 0.22, beside: 0.3 })),
  }
  return {
    ...found,
    ink,
    plain,
    texture,
    level,
    band,
    strokes,
    strokeBand,
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

/** Shares of the band's height. */
const withMargins = (band: Box, { above, beside } = { above: 0.13, beside: 0.4 }): Box => ({
  x: band.x - band.height * beside,
  y: band.y - band.height * above,
  width: band.width + 2 * band.height * beside,
  height: band.height * (1 + 2 * above),
})

/** The middle of the box: stands in for a band that was not found, and keeps the raw cut from being the level one when nothing leans. */
const within = (whole: Box, share: { beside: number; above: number }): Box => ({
  x: whole.width * share.beside,
  y: whole.height * share.above,
  width: whole.width * (1 - 2 * share.beside),
  height: whole.height * (1 - 2 * share.above),
})
