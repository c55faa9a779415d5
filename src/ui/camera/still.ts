import { longestSidePixels } from '../../device/photo.ts'
import { mostPixels } from '../../reader/quality.ts'
import { pictureSize } from '../../reader/picture-size.ts'

export type StillFault = 'notAPicture' | 'tooLarge'

/** Enough of a file to find its size, previews and notes of the camera included. */
const headBytes = 256 * 1024

/**
 * A picture from the library as a canvas that is no larger than a kept photo, upright as its camera meant it. One of more than 50 megapixels is
 * refused by its header, before it fills the phone's memory.
 */
export const openStill = async (file: Blob): Promise<{ ok: true; canvas: HTMLCanvasElement } | { ok: false; fault: StillFault }> => {
  const size = pictureSize(new Uint8Array(await file.slice(0, headBytes).arrayBuffer()))
  if (size && size.width * size.height > mostPixels) return { ok: false, fault: 'tooLarge' }
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch {
    return { ok: false, fault: 'notAPicture' }
  }
  try {
    if (picture.width * picture.height > mostPixels) return { ok: false, fault: 'tooLarge' }
    return { ok: true, canvas: drawn(picture, picture.width, picture.height, document.createElement('canvas')) }
  } finally {
    picture.close()
  }
}

/** Draws a picture or the camera's frame of the instant, scaled to what is kept of a photo at most. */
export const drawn = (source: CanvasImageSource, width: number, height: number, canvas: HTMLCanvasElement): HTMLCanvasElement => {
  const scale = Math.min(1, longestSidePixels / Math.max(width, height))
  canvas.width = Math.max(1, Math.round(width * scale))
  canvas.height = Math.max(1, Math.round(height * scale))
  canvas.getContext('2d', { willReadFrequently: true })!.drawImage(source, 0, 0, canvas.width, canvas.height)
  return canvas
}

export const jpegOf = (canvas: HTMLCanvasElement, quality: number): Promise<Blob> =>
  new Promise((resolve, reject) => canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be encoded'))), 'image/jpeg', quality))
