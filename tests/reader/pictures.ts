import { createCanvas, type SKRSContext2D } from '@napi-rs/canvas'
import type { Pixels } from '../../src/reader/picture.ts'
import { loadFonts } from '../training/fonts.ts'
import { seededRandom } from '../training/random.ts'
import { pixelsOf } from './drawing.ts'

/** 480 × 360 pictures that hold no number, each with a camera's noise. */
export type Useless = 'black' | 'lens cap' | 'bare wall' | 'bare wall in a shade' | 'bright light' | 'words' | 'page of words'

const [width, height] = [480, 360]

/** What labels say; the one of a seed is taken in turn. */
export const words = ['WASH TANK', 'FIGURES', 'Replenish', 'ph meter', 'Fixing bath', 'HOLD', 'Figures', 'DRAIN', 'Silver cell', 'Keep shut'] as const

export const useless = (kind: Useless, seed: number): Pixels => {
  loadFonts()
  const canvas = createCanvas(width, height)
  const context = canvas.getContext('2d')
  const noise = draw[kind](context, seed)
  const pixels = pixelsOf(canvas)
  const random = seededRandom(seed)
  for (let i = 0; i < pixels.data.length; i++) if (i % 4 !== 3) pixels.data[i] = pixels.data[i]! + (random.unit() + random.unit() - 1) * noise
  return pixels
}

const fill = (context: SKRSContext2D, colour: string): void => {
  context.fillStyle = colour
  context.fillRect(0, 0, width, height)
}

/** Each draws its picture and answers how strong the noise is. */
const draw: Record<Useless, (context: SKRSContext2D, seed: number) => number> = {
  black: (context) => (fill(context, '#000'), 0),
  'lens cap': (context) => (fill(context, '#030302'), 5),
  'bare wall': (context) => (fill(context, '#8f9a86'), 5),
  'bare wall in a shade': (context) => {
    const shade = context.createLinearGradient(0, 0, width, height)
    shade.addColorStop(0, '#5a5f55')
    shade.addColorStop(1, '#cfd6c6')
    context.fillStyle = shade
    context.fillRect(0, 0, width, height)
    return 4
  },
  'bright light': (context) => (fill(context, '#fffffe'), 6),
  words: (context, seed) => {
    fill(context, '#d8d8d0')
    context.fillStyle = '#222'
    context.font = '64px "Arimo"'
    context.fillText(words[(seed - 1) % words.length]!, 60, 200)
    return 4
  },
  'page of words': (context, seed) => {
    fill(context, '#e8e6dc')
    context.fillStyle = '#333'
    context.font = '22px "Arimo"'
    const words = ['wash', 'tank', 'before', 'the', 'film', 'runs', 'read', 'meter', 'rinse', 'well', 'bath', 'and', 'note', 'it', 'down']
    const random = seededRandom(seed)
    for (let row = 0; row < 9; row++) context.fillText(Array.from({ length: 7 }, () => random.pick(words)).join(' '), 40, 60 + row * 32)
    return 4
  },
}

/** Two box means of `radius`, on all colours. */
export const blurred = ({ width, height, data }: Pixels, radius: number): Pixels => {
  let from = Float32Array.from(data)
  for (let turn = 0; turn < 2; turn++)
    for (const step of [4, width * 4]) {
      const out = new Float32Array(from.length)
      const length = step === 4 ? width : height
      for (let at = 0; at < width * height; at++) {
        const place = step === 4 ? at % width : Math.floor(at / width)
        const [first, last] = [Math.max(0, place - radius), Math.min(length - 1, place + radius)]
        for (let channel = 0; channel < 4; channel++) {
          let sum = 0
          for (let i = first; i <= last; i++) sum += from[at * 4 + channel + (i - place) * step]!
          out[at * 4 + channel] = sum / (last - first + 1)
        }
      }
      from = out
    }
  return { width, height, data: Uint8ClampedArray.from(from) }
}
