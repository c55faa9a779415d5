import sharp from 'sharp'
import type { Box, Pixels } from '../reader/picture.ts'

/** A picture beyond this is refused from its header alone, before a byte of it is decoded. */
const mostPixels = 100e6
/** Longest side that is handed on: more holds nothing that a reading needs. */
const longestSide = 1600

export type PictureFault = 'noFile' | 'notAPicture' | 'pictureTooLarge' | 'boxOutside'

/** Decoded pixels and the guide box in them. */
export type OpenedPicture = { pixels: Pixels; box: Box } | { fault: PictureFault }

/**
 * Opens a picture file upright (as its camera meant it), cut to the box and scaled down while decoding, so that a 50-megapixel photograph
 * never stands in memory whole. `box` is in pixels of the upright picture; without one the whole picture is the box.
 */
export const openPicture = async (file: string, box: Box | null): Promise<OpenedPicture> => {
  const size = await sizeOf(file)
  if ('fault' in size) return size
  const part = box ? clamped(box, size) : { left: 0, top: 0, ...size }
  if (!part) return { fault: 'boxOutside' }
  try {
    const { data, info } = await sharp(file, { limitInputPixels: mostPixels })
      .autoOrient()
      .extract(part)
      .resize({ width: longestSide, height: longestSide, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true })
    const pixels = { width: info.width, height: info.height, data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.byteLength) }
    return { pixels, box: { x: 0, y: 0, width: info.width, height: info.height } }
  } catch {
    return { fault: 'notAPicture' }
  }
}

const sizeOf = async (file: string): Promise<{ width: number; height: number } | { fault: PictureFault }> => {
  try {
    const { autoOrient, width, height } = await sharp(file, { limitInputPixels: false }).metadata()
    if (width * height > mostPixels) return { fault: 'pictureTooLarge' }
    return { width: autoOrient.width, height: autoOrient.height }
  } catch (fault) {
    return { fault: /missing|no such file/i.test(String(fault)) ? 'noFile' : 'notAPicture' }
  }
}

const clamped = (box: Box, size: { width: number; height: number }): { left: number; top: number; width: number; height: number } | null => {
  const left = Math.max(0, Math.round(box.x))
  const top = Math.max(0, Math.round(box.y))
  const width = Math.min(size.width, Math.round(box.x + box.width)) - left
  const height = Math.min(size.height, Math.round(box.y + box.height)) - top
  return width >= 8 && height >= 8 ? { left, top, width, height } : null
}
