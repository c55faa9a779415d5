import type { Box, Field } from './picture.ts'

/** What the seven segments say, by geometry alone. */
export interface SegmentReading {
  text: string
  /** 0 to 1: how clearly the faintest lit segment stands off the strongest unlit one, over all figures. */
  margin: number
}

// Bits in the usual lettering, a lowest: a top, b upper right, c lower right, d bottom, e lower left, f upper left, g middle.
const [a, b, c, d, e, f, g] = [1, 2, 4, 8, 16, 32, 64]
/** Displays differ in the tails of 6, 7 and 9; each form is listed. */
const figureOf = new Map<number, string>([
  [a | b | c | d | e | f, '0'],
  [b | c, '1'],
  [a | b | g | e | d, '2'],
  [a | b | g | c | d, '3'],
  [f | g | b | c, '4'],
  [a | f | g | c | d, '5'],
  [a | f | g | e | c | d, '6'],
  [f | g | e | c | d, '6'],
  [a | b | c, '7'],
  [f | a | b | c, '7'],
  [a | b | c | d | e | f | g, '8'],
  [a | b | c | d | f | g, '9'],
  [a | b | c | f | g, '9'],
])

/**
 * Reads a seven-segment display without any training: straighten the slant, split at bare columns, and look at the seven places of each
 * figure. The second opinion to the trained recogniser, because it fails for other reasons. Null when any glyph is no figure, as on dot
 * matrix, print and blurred displays.
 */
export const readSegments = (level: Field, band: Box): SegmentReading | null => {
  const upright = straightened(level, band)
  const glyphs = glyphsOf(upright).filter((glyph) => !isFrame(upright, glyph))
  const widths = glyphs.filter((glyph) => glyph.kind === 'figure').map((glyph) => glyph.last - glyph.first + 1)
  if (widths.length === 0 || widths.length > 8) return null
  const widest = Math.max(...widths)
  if (widest > upright.height * 0.95) return null
  let text = ''
  let margin = 1
  for (const glyph of glyphs) {
    if (glyph.kind !== 'figure') {
      text += glyph.kind === 'point' ? '.' : '-'
      continue
    }
    const found = figureAt(upright, glyph, widest)
    if (!found) return null
    text += found.text
    margin = Math.min(margin, found.margin)
  }
  return /^-?\d*\.?\d+$/.test(text) ? { text, margin } : null
}

/** Rows kept above and below the band, as a share of its height: a frame runs on through them, a figure does not. */
const surplus = 0.16

interface Upright extends Field {
  /** Ink of each column just outside the band, above and below, the weaker of the two. */
  runsOn: Float32Array
}

/** The band without slant, ink scaled so that full ink is 1. The slant is the shear under which columns of ink are sharpest. */
const straightened = (level: Field, band: Box): Upright => {
  let best = 0
  let bestScore = -1
  for (let slant = -0.06; slant <= 0.3; slant += 0.04) {
    const { data, width, height } = sheared(level, band, slant, 0)
    const sums = new Float32Array(width)
    for (let y = 0; y < height; y++) for (let x = 0; x < width; x++) sums[x]! += data[y * width + x]!
    let score = 0
    for (let x = 1; x < width; x++) score += (sums[x]! - sums[x - 1]!) ** 2
    score *= 1 - 0.1 * Math.abs(slant)
    if (score > bestScore) {
      bestScore = score
      best = slant
    }
  }
  const beyond = Math.max(2, Math.round(band.height * surplus))
  const tall = sheared(level, band, best, beyond)
  const inside: Field = { width: tall.width, height: band.height, data: tall.data.slice(beyond * tall.width, (beyond + band.height) * tall.width) }
  const sorted = inside.data.slice().sort()
  const ground = sorted[Math.floor(sorted.length * 0.3)]!
  const full = Math.max(ground + 0.2, sorted[Math.floor(sorted.length * 0.95)]!)
  for (const values of [inside.data, tall.data]) for (let i = 0; i < values.length; i++) values[i] = Math.min(1, Math.max(0, (values[i]! - ground) / (full - ground)))
  const above = strongest(tall, 0, (beyond * 0.5) / tall.height)
  const below = strongest(tall, 1 - (beyond * 0.5) / tall.height, 1)
  return { ...inside, runsOn: above.map((value, x) => Math.min(value, below[x]!)) }
}

/** The band, some way wider on both sides and `beyond` rows taller, each row moved sideways by the slant. */
const sheared = (level: Field, band: Box, slant: number, beyond: number): Field => {
  const extra = Math.ceil(band.height * 0.2)
  const width = band.width + 2 * extra
  const height = band.height + 2 * beyond
  const out: Field = { width, height, data: new Float32Array(width * height) }
  for (let y = 0; y < height; y++) {
    const row = band.y + y - beyond
    if (row < 0 || row >= level.height) continue
    // Figures that lean right stand further right in their upper rows.
    const shift = slant * (band.height / 2 - (y - beyond))
    const whole = Math.floor(shift)
    const part = shift - whole
    for (let x = 0; x < width; x++) {
      const from = band.x - extra + x + whole
      if (from < 0 || from + 1 >= level.width) continue
      out.data[y * width + x] = level.data[row * level.width + from]! * (1 - part) + level.data[row * level.width + from + 1]! * part
    }
  }
  return out
}

const isFrame = ({ runsOn }: Upright, { first, last }: Glyph): boolean => {
  for (let x = first; x <= last; x++) if (runsOn[x]! > 0.5) return true
  return false
}

interface Glyph {
  kind: 'figure' | 'point' | 'minus'
  first: number
  last: number
}

/** Runs of inked columns, each told by the rows its ink is in: only the foot is a point, only the waist a minus. */
const glyphsOf = (band: Field): Glyph[] => {
  const { height } = band
  const top = strongest(band, 0, 0.34)
  const waist = strongest(band, 0.36, 0.64)
  const foot = strongest(band, 0.74, 1)
  const lower = strongest(band, 0.6, 0.74)
  const kinds: ('figure' | 'point' | 'minus' | null)[] = []
  for (let x = 0; x < band.width; x++) {
    const isHigh = top[x]! > 0.45
    const isMiddle = waist[x]! > 0.45
    const isLow = foot[x]! > 0.45
    if (!isHigh && !isMiddle && !isLow) kinds.push(null)
    else if (isLow && !isHigh && !isMiddle && lower[x]! < 0.45) kinds.push('point')
    else if (isMiddle && !isHigh && !isLow) kinds.push('minus')
    else kinds.push('figure')
  }
  const glyphs: Glyph[] = []
  const closest = Math.max(1, Math.round(height * 0.05))
  for (let x = 0; x < kinds.length; x++) {
    const kind = kinds[x]
    if (!kind) continue
    const previous = glyphs[glyphs.length - 1]
    if (previous && previous.kind === kind && x - previous.last <= (kind === 'figure' ? closest : closest + 1)) previous.last = x
    else glyphs.push({ kind, first: x, last: x })
  }
  return settled(glyphs, height)
}

/** Bits of a figure's own bars that look like points or minuses go back to the figure; specks go. */
const settled = (glyphs: Glyph[], height: number): Glyph[] => {
  const out: Glyph[] = []
  for (let i = 0; i < glyphs.length; i++) {
    const glyph = glyphs[i]!
    const width = glyph.last - glyph.first + 1
    if (glyph.kind === 'figure') {
      const previous = out[out.length - 1]
      if (previous?.kind === 'figure' && glyph.first - previous.last <= Math.max(2, height * 0.07) && glyph.last - previous.first < height * 0.75) previous.last = glyph.last
      else out.push({ ...glyph })
    } else if (glyph.kind === 'minus' && isBar(glyphs, i, height)) {
      // The bar of a 4, between its upright and its stem: the upright grows, and the stem joins it as the next figure.
      const previous = out[out.length - 1]
      if (previous?.kind === 'figure') previous.last = glyph.last
    } else if (glyph.kind === 'minus' && width >= height * 0.09) out.push({ ...glyph })
    else if (glyph.kind === 'point' && width >= height * 0.05 && width <= height * 0.25) out.push({ ...glyph })
  }
  return out.filter((glyph) => glyph.kind !== 'figure' || glyph.last - glyph.first + 1 >= height * 0.05)
}

/** A minus stands apart; a bar touches a figure on each side. */
const isBar = (glyphs: readonly Glyph[], at: number, height: number): boolean => {
  const [before, bar, after] = [glyphs[at - 1], glyphs[at]!, glyphs[at + 1]]
  const touching = Math.max(2, height * 0.07)
  return before?.kind === 'figure' && after?.kind === 'figure' && bar.first - before.last <= touching && after.first - bar.last <= touching
}

const figureAt = (band: Field, glyph: Glyph, widest: number): SegmentReading | null => {
  const width = glyph.last - glyph.first + 1
  if (width < widest * 0.55 || widest < band.height * 0.28) {
    // A narrow stroke from head to foot is a 1; anything else narrow is no figure.
    const upper = verticalBar(band, glyph.first, glyph.last, 0.14, 0.42)
    const lower = verticalBar(band, glyph.first, glyph.last, 0.58, 0.86)
    return width <= band.height * 0.32 && Math.min(upper, lower) > 0.5 ? { text: '1', margin: Math.min(upper, lower) } : null
  }
  const [left, right] = [glyph.first, glyph.last]
  const third = Math.max(1, Math.round(width * 0.34))
  const levels = [
    horizontalBar(band, left, right, 0, 0.24),
    verticalBar(band, right - third, right, 0.17, 0.42),
    verticalBar(band, right - third, right, 0.58, 0.83),
    horizontalBar(band, left, right, 0.76, 1),
    verticalBar(band, left, left + third, 0.58, 0.83),
    verticalBar(band, left, left + third, 0.17, 0.42),
    horizontalBar(band, left, right, 0.38, 0.62),
  ]
  const sorted = [...levels].sort((x, y) => y - x)
  let best: SegmentReading | null = null
  // Cut the sorted levels where the step down is largest among the cuts that make a figure.
  for (let lit = 2; lit <= 7; lit++) {
    const lowestLit = sorted[lit - 1]!
    const highestUnlit = sorted[lit] ?? 0
    let bits = 0
    levels.forEach((value, segment) => (bits |= value >= lowestLit ? 1 << segment : 0))
    const text = figureOf.get(bits)
    // With nothing unlit to compare with, an 8 must show seven strong bars.
    const margin = lit === 7 ? lowestLit - 0.25 : lowestLit - highestUnlit
    if (text && lowestLit > 0.35 && (!best || margin > best.margin)) best = { text, margin }
  }
  if (!best) return null
  const largest = Math.max(...sorted.slice(1, 7).map((value, i) => sorted[i]! - value), sorted[6]! - 0.25)
  return best.margin >= largest - 1e-6 ? best : { text: best.text, margin: 0 }
}

/** Mean ink along the best row of a strip, over the middle of the figure. */
const horizontalBar = (band: Field, left: number, right: number, from: number, to: number): number => {
  const inset = (right - left) * 0.32
  let best = 0
  for (let y = Math.floor(from * band.height); y < Math.min(band.height, Math.ceil(to * band.height)); y++) {
    let sum = 0
    let count = 0
    for (let x = Math.round(left + inset); x <= right - inset; x++) {
      sum += band.data[y * band.width + x]!
      count++
    }
    if (count > 0) best = Math.max(best, sum / count)
  }
  return best
}

/** Mean ink along the best column of a strip. */
const verticalBar = (band: Field, left: number, right: number, from: number, to: number): number => {
  let best = 0
  const [first, last] = [Math.round(from * band.height), Math.round(to * band.height)]
  for (let x = Math.max(0, left); x <= Math.min(band.width - 1, right); x++) {
    let sum = 0
    for (let y = first; y < last; y++) sum += band.data[y * band.width + x]!
    best = Math.max(best, sum / Math.max(1, last - first))
  }
  return best
}

/** The strongest ink of each column within a share of the height. */
const strongest = (band: Field, from: number, to: number): Float32Array => {
  const out = new Float32Array(band.width)
  for (let y = Math.floor(from * band.height); y < Math.min(band.height, Math.ceil(to * band.height)); y++)
    for (let x = 0; x < band.width; x++) out[x] = Math.max(out[x]!, band.data[y * band.width + x]!)
  return out
}
