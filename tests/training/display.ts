import { createCanvas, type Canvas, type SKRSContext2D } from '@napi-rs/canvas'
import type { Box } from '../../src/reader/picture.ts'
import { dotLook, drawDots } from './dots.ts'
import { dotFonts, printFonts, segmentFonts, type Font } from './fonts.ts'
import type { Random } from './random.ts'
import { drawSegments, segmentLook } from './segments.ts'
import { css, type Palette, type Style } from './styles.ts'

/** Figures on a clear ground, with the tight box around what is lit. */
export interface Figures {
  canvas: Canvas
  box: Box
}

interface Lit {
  left: number
  right: number
  /** Above and below the figure's nominal height, for fonts whose figures do not fill it. */
  top: number
  bottom: number
}

type Draw = (context: SKRSContext2D, ink: { lit: string; ghost: string | null }) => Lit

/** Draws `text` in one of the looks of its style. `heldOut` takes the fonts that training never sees. */
export const drawFigures = (random: Random, text: string, style: Style, height: number, colours: Palette, heldOut: boolean): Figures => {
  const slant = style === 'italic' ? random.between(0.08, 0.22) : style === 'print' || style === 'dot' ? 0 : random.chance(0.25) ? random.between(0.02, 0.1) : 0
  const draw = drawer(random, text, style, height, heldOut)
  const margin = Math.ceil(height * 0.7)
  const canvas = createCanvas(Math.ceil(height * (text.length + 1) * 1.05 + 2 * margin), Math.ceil(height * 1.6 + 2 * margin))
  const context = canvas.getContext('2d')
  const origin = { x: margin + slant * height, y: margin }
  const ghost = colours.ghost > 0 ? css(colours.ink, colours.ghost) : null
  const place = (dx: number, dy: number): void => context.setTransform(1, 0, -slant, 1, origin.x + dx, origin.y + dy)
  if (colours.shadow > 0) {
    place(colours.shadow * height * random.between(-1, 1), colours.shadow * height)
    draw(context, { lit: css(colours.ink, 0.28), ghost: null })
  }
  if (colours.glow > 0) {
    context.shadowColor = css(colours.ink, 0.9)
    context.shadowBlur = colours.glow * height * 2
  }
  place(0, 0)
  const lit = draw(context, { lit: css(colours.ink), ghost })
  context.setTransform(1, 0, 0, 1, 0, 0)
  const left = origin.x + lit.left - slant * height
  return { canvas, box: { x: left, y: origin.y + lit.top, width: origin.x + lit.right - left, height: lit.bottom - lit.top } }
}

/** Several lines of words, as on a label: something a camera may be pointed at by mistake. */
export const drawPage = (random: Random, text: string, height: number, colours: Palette): Figures => {
  const font = random.pick(printFonts.filter((one) => one.trained))
  const rows = text.split('\n')
  const pitch = height / rows.length
  const canvas = createCanvas(640, Math.ceil(height) + 20)
  const context = canvas.getContext('2d')
  context.font = `${pitch * random.between(0.6, 0.85)}px "${font.family}"`
  context.fillStyle = css(colours.ink)
  const place = random.between(0, 0.5)
  const widths = rows.map((row) => context.measureText(row).width)
  const widest = Math.min(600, Math.max(...widths))
  rows.forEach((row, i) => context.fillText(row, 10 + (widest - widths[i]!) * place, (i + 0.8) * pitch))
  return { canvas, box: { x: 10, y: 0, width: widest, height } }
}

const drawer = (random: Random, text: string, style: Style, height: number, heldOut: boolean): Draw => {
  const isSegment = style !== 'dot' && style !== 'print'
  const letters = /[a-zA-Z]/.test(text)
  if (isSegment && (letters || (!heldOut && random.chance(0.62)))) {
    const look = segmentLook(random)
    return (context, ink) => ({ ...drawSegments(context, text, height, look, ink), top: 0, bottom: height })
  }
  if (style === 'dot' && !letters && !heldOut && random.chance(0.7)) {
    const look = dotLook(random)
    return (context, ink) => ({ ...drawDots(context, text, height, look, ink), top: 0, bottom: height })
  }
  const fonts: readonly Font[] = (isSegment ? segmentFonts : style === 'dot' ? dotFonts : printFonts).filter((font) => font.trained !== heldOut)
  return withFont(random.pick(fonts), text, height, isSegment, style === 'print' ? random.between(0.82, 1.1) : 1, random.between(0, style === 'print' ? 0.1 : 0.04))
}

const withFont = (font: Font, text: string, height: number, hasGhost: boolean, widen: number, spacing: number): Draw => {
  const probe = createCanvas(8, 8).getContext('2d')
  probe.font = `100px "${font.family}"`
  const eight = probe.measureText('8')
  const size = (100 * height) / (eight.actualBoundingBoxAscent + eight.actualBoundingBoxDescent)
  const below = (eight.actualBoundingBoxDescent * size) / 100
  return (context, ink) => {
    context.save()
    context.font = `${size}px "${font.family}"`
    context.letterSpacing = `${spacing * height}px`
    context.scale(widen, 1)
    const baseline = height - below
    if (hasGhost && ink.ghost) {
      context.fillStyle = ink.ghost
      context.fillText(text.replace(/\d/g, '8').replace('-', ' '), 0, baseline)
    }
    context.fillStyle = ink.lit
    context.fillText(text, 0, baseline)
    const size2 = context.measureText(text)
    context.restore()
    return { left: -size2.actualBoundingBoxLeft * widen, right: size2.actualBoundingBoxRight * widen, top: 0, bottom: height }
  }
}
