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

export type PhotoRefusal = { code: 'tooLarge'; bytes: number; allowedBytes: number }

/** What is kept of a picture is no larger; whoever draws it scales it. */
export const longestSidePixels = 1600

/** A picture that was drawn: encoding what was drawn leaves out everything the camera wrote beside it (place, serial number). */
export interface Drawn {
  width: number
  height: number
  jpeg(quality: number): Promise<Blob>
}

/** Encodes as well as there is room for. */
export const preparePhoto = async ({ width, height, jpeg }: Drawn): Promise<{ ok: true; photo: Photo } | { ok: false; refusal: PhotoRefusal }> => {
  let smallest = Infinity
  for (const quality of [0.85, 0.7, 0.5]) {
    const bytes = await (await jpeg(quality)).arrayBuffer()
    if (bytes.byteLength <= largestBlobBytes) return { ok: true, photo: { sha256: await sha256OfBytes(bytes), bytes, widthPixels: width, heightPixels: height } }
    smallest = bytes.byteLength
  }
  return { ok: false, refusal: { code: 'tooLarge', bytes: smallest, allowedBytes: largestBlobBytes } }
}
