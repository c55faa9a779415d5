import { createCanvas, type Canvas } from '@napi-rs/canvas'
import type { Pixels } from '../../src/reader/picture.ts'
import { seededRandom } from '../training/random.ts'
import { drawSegments, segmentLook } from '../training/segments.ts'

/** A clean seven-segment display without camera or clutter: black on light, figures 120 pixels high. */
export const cleanDisplay = (text: string, seed: number, lean: { turnDegrees?: number; slant?: number } = {}): Pixels => {
  const canvas = createCanvas(640, 240)
  const context = canvas.getContext('2d')
  context.fillStyle = '#c8d0bc'
  context.fillRect(0, 0, 640, 240)
  context.translate(320, 120)
  context.rotate(((lean.turnDegrees ?? 0) * Math.PI) / 180)
  context.transform(1, 0, -(lean.slant ?? 0), 1, 0, 0)
  const look = segmentLook(seededRandom(seed))
  context.translate(-(text.replace(/[.]/g, '').length * look.pitch * 120) / 2, -60)
  drawSegments(context, text, 120, look, { lit: '#20241c', ghost: null })
  return pixelsOf(canvas)
}

export const pixelsOf = (canvas: Canvas): Pixels => ({
  width: canvas.width,
  height: canvas.height,
  data: new Uint8ClampedArray(canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height).data),
})

export const wholeOf = ({ width, height }: Pixels): { x: number; y: number; width: number; height: number } => ({ x: 0, y: 0, width, height })
