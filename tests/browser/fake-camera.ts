import { writeFileSync } from 'node:fs'
import { encode } from 'uqr'

const width = 640
const height = 480

/** A film of one picture for the browser's fake camera: a QR code as it lies in the hand, dark on light, not filling the frame. */
export const writeCodeFilm = (path: string, text: string): void => {
  const { data, size } = encode(text, { ecc: 'Q', border: 4 })
  const square = Math.floor((height * 0.7) / size)
  const left = Math.floor((width - square * size) / 2)
  const top = Math.floor((height - square * size) / 2)
  const luma = Buffer.alloc(width * height, 150)
  for (let y = 0; y < size * square; y++)
    for (let x = 0; x < size * square; x++) luma[(top + y) * width + left + x] = data[Math.floor(y / square)]![Math.floor(x / square)] ? 40 : 220
  const chroma = Buffer.alloc((width * height) / 2, 128)
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, chroma])
  writeFileSync(path, Buffer.concat([Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`), frame, frame]))
}

/** What makes the browser take the film for its camera. It still asks the person, who must allow it. */
export const filmFlags = (path: string): string[] => ['--use-fake-device-for-media-stream', `--use-file-for-fake-video-capture=${path}`]
