import { createCanvas } from '@napi-rs/canvas'
import { writeFileSync } from 'node:fs'
import { usualGuide } from '../../src/ui/camera/display.ts'
import { scene } from '../training/scene.ts'

/** A picture of a display, held so that its figures lie in the guide box as it stands the first time. */
export const writeDisplayPicture = async (path: string, text: string): Promise<void> => {
  const { pixels, box } = await scene(910_012, { style: 'lcd', text })
  const whole = createCanvas(pixels.width, pixels.height)
  const image = whole.getContext('2d').createImageData(pixels.width, pixels.height)
  image.data.set(pixels.data)
  whole.getContext('2d').putImageData(image, 0, 0)
  const canvas = createCanvas(Math.round((box.width * 1.4) / usualGuide.width), Math.round((box.height * 1.4) / usualGuide.height))
  const context = canvas.getContext('2d')
  context.fillStyle = '#777'
  context.fillRect(0, 0, canvas.width, canvas.height)
  const middle = { x: canvas.width * (usualGuide.x + usualGuide.width / 2), y: canvas.height * (usualGuide.y + usualGuide.height / 2) }
  context.drawImage(whole, middle.x - box.x - box.width / 2, middle.y - box.y - box.height / 2)
  writeFileSync(path, canvas.toBuffer('image/jpeg', 92))
}
