import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas'
import type { Box, Pixels } from '../../src/reader/picture.ts'
import { shot, takePicture } from './camera.ts'
import { drawFigures, drawPage } from './display.ts'
import { figures, printedWords } from './figures.ts'
import { loadFonts, printFonts } from './fonts.ts'
import { seededRandom, type Random } from './random.ts'
import { css, palette, styles, type Palette, type Rgb, type Style } from './styles.ts'

/** One drawn picture of an instrument and what a person would read on it. */
export interface Scene {
  seed: number
  style: Style
  /** Font that training never sees. */
  heldOut: boolean
  text: string
  pixels: Pixels
  inkIsDarker: boolean
  /** Tight around the figures; a guide box is this, grown. */
  box: Box
}

export interface SceneWishes {
  style?: Style
  heldOut?: boolean
  /** What stands there instead of a number: a word, or several lines of words. */
  text?: string
}

// Room around the figures, so that the edge of the drawing stays out of every guide box.
const [drawnWidth, drawnHeight] = [1200, 900]
const [pictureWidth, pictureHeight] = [480, 360]

/** The scene of a seed: always the same picture, whatever was drawn before it. */
export const scene = async (seed: number, wishes: SceneWishes = {}): Promise<Scene> => {
  loadFonts()
  const random = seededRandom(seed)
  const style = wishes.style ?? random.pick(styles)
  const heldOut = wishes.heldOut ?? false
  const text = wishes.text ?? figures(random)
  const colours = palette(random, style)
  const nominal = Math.min(random.between(90, 190), 560 / Math.max(2, text.replace('.', '').length * 0.78))
  const drawn = text.includes('\n') ? drawPage(random, text, nominal, colours) : drawFigures(random, text, style, nominal, colours, heldOut)
  const canvas = createCanvas(drawnWidth, drawnHeight)
  const context = canvas.getContext('2d')
  const at = { x: (drawnWidth - drawn.box.width) / 2 + random.between(-30, 30), y: (drawnHeight - drawn.box.height) / 2 + random.between(-40, 40) }
  const box: Box = { ...at, width: drawn.box.width, height: drawn.box.height }
  face(context, random)
  window(context, random, box, colours, style)
  surroundings(context, random, box, colours)
  context.drawImage(drawn.canvas, at.x - drawn.box.x, at.y - drawn.box.y)
  glass(context, random, box)
  const scale = Math.min((pictureWidth * random.between(0.35, 0.8)) / box.width, (pictureHeight * random.between(0.22, 0.6)) / box.height)
  const how = shot(random, nominal * scale, scale)
  const inkIsDarker = brightness(colours.ink) < brightness(colours.ground)
  return { seed, style, heldOut, text, inkIsDarker, ...(await takePicture(canvas, box, pictureWidth, pictureHeight, how, random)) }
}

const face = (context: SKRSContext2D, random: Random): void => {
  const tone = random.between(20, 225)
  const body: Rgb = [tone + random.between(-30, 30), tone + random.between(-25, 25), tone + random.between(-30, 30)]
  context.fillStyle = css(body)
  context.fillRect(0, 0, drawnWidth, drawnHeight)
  const grain = random.whole(0, 60)
  for (let i = 0; i < grain; i++) {
    context.fillStyle = css(random.chance(0.5) ? [255, 255, 255] : [0, 0, 0], random.between(0.02, 0.08))
    context.fillRect(random.between(0, drawnWidth), random.between(0, drawnHeight), random.between(10, 220), random.between(1, 6))
  }
  for (let i = random.whole(0, 10); i > 0; i--) {
    context.fillStyle = css([random.between(0, 255), random.between(0, 255), random.between(0, 255)], random.between(0.4, 1))
    context.beginPath()
    context.roundRect(random.between(0, drawnWidth), random.pick([random.between(60, 190), random.between(690, 840)]), random.between(30, 110), random.between(20, 60), random.between(0, 20))
    context.fill()
  }
}

/** The glass of the display with its frame; sometimes the frame runs close to the figures. */
const window = (context: SKRSContext2D, random: Random, box: Box, colours: Palette, style: Style): void => {
  const beside = box.height * random.between(0.18, 1.1)
  const above = box.height * random.between(0.16, 0.8)
  const frame = random.between(0, 14)
  const [x, y, width, height] = [box.x - beside, box.y - above, box.width + beside + box.height * random.between(0.18, 1.3), box.height + above + box.height * random.between(0.16, 0.9)]
  context.fillStyle = css([random.between(10, 120), random.between(10, 120), random.between(10, 120)])
  context.beginPath()
  context.roundRect(x - frame, y - frame, width + 2 * frame, height + 2 * frame, random.between(0, 16))
  context.fill()
  const shade = context.createLinearGradient(x, y, x + width * random.between(-1, 1), y + height)
  shade.addColorStop(0, css(colours.ground.map((part) => part * random.between(0.9, 1.1)) as Rgb))
  shade.addColorStop(1, css(colours.ground.map((part) => part * random.between(0.82, 1.15)) as Rgb))
  context.fillStyle = shade
  context.beginPath()
  context.roundRect(x, y, width, height, random.between(0, 10))
  context.fill()
  if (style !== 'print' || !random.chance(0.3)) return
  // Counter wheels: each figure in its own window, told by thin lines between.
  context.strokeStyle = css(colours.ink, random.between(0.1, 0.35))
  context.lineWidth = random.between(1, 3)
  context.strokeRect(box.x - box.height * 0.15, box.y - box.height * 0.13, box.width + box.height * 0.3, box.height * 1.26)
}

/** Unit, annunciators and a smaller second line near the figures; words around the display. */
const surroundings = (context: SKRSContext2D, random: Random, box: Box, colours: Palette): void => {
  const label = (text: string, x: number, y: number, size: number, colour: string): void => {
    context.font = `${size}px "${random.pick(printFonts.filter((font) => font.trained)).family}"`
    context.fillStyle = colour
    context.fillText(text, x, y)
  }
  const inside = css(colours.ink, random.between(0.6, 1))
  const small = (): number => box.height * random.between(0.16, 0.52)
  if (random.chance(0.6)) label(random.pick(printedWords), box.x + box.width + box.height * random.between(0.12, 0.4), box.y + box.height * random.pick([random.between(0.3, 0.5), random.between(0.85, 1)]), small(), inside)
  if (random.chance(0.2)) {
    // Ends before the figures begin.
    context.textAlign = 'right'
    label(random.pick(printedWords), box.x - box.height * random.between(0.15, 0.4), box.y + box.height * random.between(0.3, 1), box.height * random.between(0.24, 0.5), inside)
    context.textAlign = 'left'
  }
  if (random.chance(0.35)) label(random.pick(printedWords), box.x + box.width * random.between(-0.1, 0.8), box.y - box.height * random.between(0.12, 0.3), box.height * random.between(0.16, 0.36), inside)
  if (random.chance(0.3)) label(`${random.between(10, 60).toFixed(1)} ${random.pick(['°C', '°F', 'mV', '%'])}`, box.x + box.width * random.between(-0.1, 0.7), box.y + box.height * random.between(1.5, 1.75), box.height * random.between(0.2, 0.36), inside)
  for (let i = random.whole(0, 6); i > 0; i--)
    label(random.pick(printedWords), random.between(0, drawnWidth - 80), random.pick([random.between(80, 200), random.between(700, 820)]), random.between(14, 34), css(random.chance(0.5) ? [240, 240, 240] : [20, 20, 20]))
}

/** Reflections and the shadow of a hand on the glass. */
const glass = (context: SKRSContext2D, random: Random, box: Box): void => {
  if (random.chance(0.35)) {
    const [x, y] = [box.x + box.width * random.between(-0.1, 1.1), box.y + box.height * random.between(-0.3, 1.3)]
    const radius = box.height * random.between(0.4, 1.6)
    const spot = context.createRadialGradient(x, y, 0, x, y, radius)
    spot.addColorStop(0, css([255, 255, 255], random.between(0.2, 0.7)))
    spot.addColorStop(1, css([255, 255, 255], 0))
    context.fillStyle = spot
    context.fillRect(x - radius, y - radius, 2 * radius, 2 * radius)
  }
  if (random.chance(0.25)) {
    const from = random.between(0, drawnWidth)
    context.fillStyle = css(random.chance(0.5) ? [0, 0, 0] : [255, 255, 255], random.between(0.08, 0.3))
    context.beginPath()
    context.moveTo(from, 0)
    context.lineTo(from + random.between(60, 300), 0)
    context.lineTo(from + random.between(-200, 400), drawnHeight)
    context.lineTo(from + random.between(-400, 100), drawnHeight)
    context.fill()
  }
}

const brightness = ([red, green, blue]: Rgb): number => red + green + blue
