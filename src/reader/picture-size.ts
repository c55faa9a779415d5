/**
 * Width and height of a picture file by its first bytes, before anything is decoded: JPEG (ITU-T T.81, frame header SOFn), PNG (W3C, IHDR),
 * GIF89a and WebP (RFC 9649). Null where they do not tell; 256 kB are enough unless a JPEG carries a larger preview.
 */
export const pictureSize = (bytes: Uint8Array): { width: number; height: number } | null => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  try {
    if (view.getUint16(0) === 0xffd8) return jpegSize(view)
    if (view.getUint32(0) === 0x89504e47) return { width: view.getUint32(16), height: view.getUint32(20) }
    if (view.getUint32(0) === 0x47494638) return { width: view.getUint16(6, true), height: view.getUint16(8, true) }
    if (view.getUint32(0) === 0x52494646 && view.getUint32(8) === 0x57454250) return webpSize(view)
  } catch (fault) {
    // Cut short before the size stands.
    if (!(fault instanceof RangeError)) throw fault
  }
  return null
}

const jpegSize = (view: DataView): { width: number; height: number } | null => {
  let at = 2
  for (;;) {
    if (view.getUint8(at) !== 0xff) return null
    const marker = view.getUint8(at + 1)
    // SOF0 to SOF15, without DHT (C4), JPG (C8) and DAC (CC), which lie among them.
    if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) }
    if (marker === 0xff) at += 1
    else at += 2 + view.getUint16(at + 2)
  }
}

const webpSize = (view: DataView): { width: number; height: number } | null => {
  const uint24 = (at: number): number => view.getUint16(at, true) | (view.getUint8(at + 2) << 16)
  switch (view.getUint32(12)) {
    case 0x56503858: // VP8X
      return { width: uint24(24) + 1, height: uint24(27) + 1 }
    case 0x5650384c: { // VP8L
      const bits = view.getUint32(21, true)
      return { width: (bits & 0x3fff) + 1, height: ((bits >> 14) & 0x3fff) + 1 }
    }
    case 0x56503820: // VP8
      return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff }
    default:
      return null
  }
}
