import { deflateSync } from 'node:zlib'
import type { GrayImage } from '../../src/reader/picture.ts'

/** A line image and the figures on it. */
export interface TrainingLine {
  image: GrayImage
  text: string
}

/**
 * Lines as one training document of tesseract 5 (DocumentData::SaveDocument, ccstruct/imagedata.cpp): little-endian, each string and
 * list with its length first. Written directly, since one run of the program a line takes a hundred times as long. Every line carries
 * one box around all of it: without a box the trainer may turn the polarity round.
 */
export const trainingDocument = (lines: readonly TrainingLine[]): Buffer => {
  const parts: Buffer[] = [uint32(lines.length)]
  for (const { image, text } of lines) {
    const box = Buffer.alloc(8)
    box.writeInt16LE(image.width, 4)
    box.writeInt16LE(image.height, 6)
    const words = Buffer.from(text, 'utf8')
    const png = grayPng(image)
    // present, no file name, page 0, picture, no language, text, boxes, texts of the boxes, not vertical
    parts.push(Buffer.from([1]), uint32(0), uint32(0), uint32(png.length), png, uint32(0), uint32(words.length), words, uint32(1), box, uint32(1), uint32(words.length), words, Buffer.from([0]))
  }
  return Buffer.concat(parts)
}

const uint32 = (value: number): Buffer => {
  const out = Buffer.alloc(4)
  out.writeUInt32LE(value)
  return out
}

/** An 8-bit grey PNG without filters, enough for line images. */
export const grayPng = ({ width, height, data }: GrayImage): Buffer => {
  const raw = Buffer.alloc((width + 1) * height)
  for (let y = 0; y < height; y++) raw.set(data.subarray(y * width, (y + 1) * width), y * (width + 1) + 1)
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header[8] = 8
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', header), chunk('IDAT', deflateSync(raw)), chunk('IEND', Buffer.alloc(0))])
}

const chunk = (kind: string, body: Buffer): Buffer => {
  const named = Buffer.concat([Buffer.from(kind, 'latin1'), body])
  const out = Buffer.alloc(named.length + 8)
  out.writeUInt32BE(body.length, 0)
  named.copy(out, 4)
  out.writeUInt32BE(crc32(named), named.length + 4)
  return out
}

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c >>> 0
})

const crc32 = (data: Buffer): number => {
  let c = 0xffffffff
  for (const byte of data) c = crcTable[(c ^ byte) & 0xff]! ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}
