import type { SKRSContext2D } from '@napi-rs/canvas'
import type { Random } from './random.ts'

/** How one maker-less seven-segment display cuts its segments. Lengths are shares of the figure's height. */
export interface SegmentLook {
  figureWidth: number
  pitch: number
  thickness: number
  gap: number
  /** Bevelled ends, square bars, or bars with round ends. */
  ends: 'bevel' | 'bar' | 'round'
  /** 6 with its top bar, 9 with its bottom bar, 7 with its upper left bar: displays differ. */
  tails: { six: boolean; nine: boolean; seven: boolean }
  pointSize: number
  pointIsRound: boolean
  /** Where the point sits in the space after its figure, 0 to 1; on some displays it has a place of its own. */
  pointPlace: number
  pointOwnPlace: number
  minusWidth: number
}

export const segmentLook = (random: Random): SegmentLook => {
  const figureWidth = random.between(0.42, 0.66)
  const thickness = random.between(0.07, 0.17)
  return {
    figureWidth,
    pitch: figureWidth + random.between(0.12, 0.32),
    thickness,
    gap: random.between(0, 0.03),
    ends: random.pick(['bevel', 'bevel', 'bar', 'round'] as const),
    tails: { six: random.chance(0.9), nine: random.chance(0.9), seven: random.chance(0.2) },
    pointSize: thickness * random.between(0.8, 1.35),
    pointIsRound: random.chance(0.6),
    pointPlace: random.between(0.35, 0.65),
    pointOwnPlace: random.chance(0.25) ? random.between(0.08, 0.2) : 0,
    minusWidth: random.between(0.55, 1),
  }
}

// Segments in the usual lettering: a top, b upper right, c lower right, d bottom, e lower left, f upper left, g middle.
const segmentsOf: Record<string, string> = {
  '0': 'abcdef', '1': 'bc', '2': 'abged', '3': 'abgcd', '4': 'fgbc', '5': 'afgcd', '6': 'fgcde', '7': 'abc', '8': 'abcdefg', '9': 'abcfg', '-': 'g',
  E: 'adefg', r: 'eg', H: 'bcefg', L: 'def', P: 'abefg', C: 'adef', A: 'abcefg', d: 'bcdeg', h: 'cefg', F: 'aefg', U: 'bcdef', n: 'ceg', b: 'cdefg', t: 'defg',
}

const segmentsFor = (figure: string, look: SegmentLook): string => {
  const base = segmentsOf[figure]
  if (base === undefined) throw new Error(`seven segments cannot form "${figure}"`)
  if (figure === '6' && look.tails.six) return `${base}a`
  if (figure === '9' && look.tails.nine) return `${base}d`
  if (figure === '7' && look.tails.seven) return `${base}f`
  return base
}

/**
 * Draws `text` from (0, 0) downwards and rightwards at `height`, ghosts (unlit segments) first. Returns the width of what is lit,
 * with the place of its left edge.
 */
export const drawSegments = (
  context: SKRSContext2D,
  text: string,
  height: number,
  look: SegmentLook,
  ink: { lit: string; ghost: string | null },
): { left: number; right: number } => {
  const thickness = look.thickness * height
  const width = look.figureWidth * height
  let x = 0
  let left = Infinity
  let right = 0
  for (const figure of text) {
    if (figure === '.') {
      const size = look.pointSize * height
      const place = x - look.pitch * height + width + (look.pitch * height - width) * look.pointPlace + (look.pointOwnPlace * height) / 2
      context.fillStyle = ink.lit
      context.beginPath()
      if (look.pointIsRound) context.arc(place, height - size / 2, size / 2, 0, 7)
      else context.rect(place - size / 2, height - size, size, size)
      context.fill()
      x += look.pointOwnPlace * height
      left = Math.min(left, place - size / 2)
      right = Math.max(right, place + size / 2)
      continue
    }
    const lit = segmentsFor(figure, look)
    const cell = figure === '-' ? width * look.minusWidth : width
    for (const segment of 'abcdefg') {
      const isLit = lit.includes(segment)
      if (!isLit && (!ink.ghost || figure === '-')) continue
      context.fillStyle = isLit ? ink.lit : (ink.ghost as string)
      drawSegment(context, segment, x, cell, height, thickness, look)
    }
    left = Math.min(left, figure === '1' ? x + width - thickness : x)
    right = Math.max(right, x + cell)
    x += look.pitch * height - (width - cell)
  }
  return { left, right }
}

const drawSegment = (context: SKRSContext2D, segment: string, x: number, width: number, height: number, thickness: number, look: SegmentLook): void => {
  const gap = look.gap * height
  const half = thickness / 2
  const [left, right] = [x + half, x + width - half]
  const [top, waist, foot] = [half, height / 2, height - half]
  const ends: Record<string, [number, number, number, number]> = {
    a: [left, top, right, top], g: [left, waist, right, waist], d: [left, foot, right, foot],
    f: [left, top, left, waist], e: [left, waist, left, foot], b: [right, top, right, waist], c: [right, waist, right, foot],
  }
  const [x0, y0, x1, y1] = ends[segment]!
  const length = Math.hypot(x1 - x0, y1 - y0)
  if (length <= 2 * gap) return
  const [ux, uy] = [(x1 - x0) / length, (y1 - y0) / length]
  const [ax, ay, bx, by] = [x0 + ux * gap, y0 + uy * gap, x1 - ux * gap, y1 - uy * gap]
  context.beginPath()
  if (look.ends === 'round') {
    context.lineWidth = thickness * 0.92
    context.lineCap = 'round'
    context.strokeStyle = context.fillStyle
    context.moveTo(ax, ay)
    context.lineTo(bx, by)
    context.stroke()
    return
  }
  const cut = look.ends === 'bevel' ? half : 0
  const [nx, ny] = [-uy * half, ux * half]
  context.moveTo(ax, ay)
  context.lineTo(ax + ux * cut + nx, ay + uy * cut + ny)
  context.lineTo(bx - ux * cut + nx, by - uy * cut + ny)
  context.lineTo(bx, by)
  context.lineTo(bx - ux * cut - nx, by - uy * cut - ny)
  context.lineTo(ax + ux * cut - nx, ay + uy * cut - ny)
  context.closePath()
  context.fill()
}
