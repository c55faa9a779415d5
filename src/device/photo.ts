import type { Hash } from '../record/ids.ts'
import { largestBlobBytes } from '../wire/blobs.ts'
import { sha256OfBytes } from './web-seal.ts'

/** A picture ready to be kept: scaled, without its camera's data, named by the SHA-256 of its bytes. */
export interface Photo {
  sha256: Hash
  bytes: ArrayBuffer
  widthPixels: number
  heightPixels: number
}

export type PhotoRefusal = { code: 'unreadable' } | { code: 'tooLarge'; bytes: number; allowedBytes: number }

export const longestSidePixels = 1600

/**
 * Decodes, scales to at most 1,600 pixels and encodes again as JPEG. Encoding anew leaves out everything the camera wrote beside
 * the picture (place, serial number); the turn that it noted is applied to the pixels first.
 */
export const preparePhoto = async (file: Blob): Promise<{ ok: true; photo: Photo } | { ok: false; refusal: PhotoRefusal }> => {
  let picture: ImageBitmap
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch {
    return { ok: false, refusal: { code: 'unreadable' } }
  }
  const scale = Math.min(1, longestSidePixels / Math.max(picture.width, picture.height))
  const widthPixels = Math.max(1, Math.round(picture.width * scale))
  const heightPixels = Math.max(1, Math.round(picture.height * scale))
  const canvas = new OffscreenCanvas(widthPixels, heightPixels)
  canvas.getContext('2d')!.drawImage(picture, 0, 0, widthPixels, heightPixels)
  picture.close()
  for (const quality of [0.85, 0.7, 0.5]) {
    const bytes = await (await canvas.convertToBlob({ type: 'image/jpeg', quality })).arrayBuffer()
    if (bytes.byteLength <= largestBlobBytes) return { ok: true, photo: { sha256: await sha256OfBytes(bytes), bytes, widthPixels, heightPixels } }
    if (quality === 0.5) return { ok: false, refusal: { code: 'tooLarge', bytes: bytes.byteLength, allowedBytes: largestBlobBytes } }
  }
  return { ok: false, refusal: { code: 'unreadable' } }
}
