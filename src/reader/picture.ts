/** Colour pixels as a camera gives them: rows from the top, four bytes a pixel (red, green, blue, opacity). */
export interface Pixels {
  width: number
  height: number
  data: Uint8ClampedArray
}

/** One byte a pixel, rows from the top; 0 is full ink and 255 bare ground in every line made here. */
export interface GrayImage {
  width: number
  height: number
  data: Uint8Array
}

/** A field of real numbers over a picture, rows from the top. */
export interface Field {
  width: number
  height: number
  data: Float32Array
}

/** The guide box, in pixels of the whole picture. */
export interface Box {
  x: number
  y: number
  width: number
  height: number
}

export const field = (width: number, height: number): Field => ({ width, height, data: new Float32Array(width * height) })

/** The part of `box` that lies on the picture, in whole pixels; null when less than 8 × 8 is left. */
export const clampBox = (box: Box, picture: { width: number; height: number }): Box | null => {
  const x = Math.max(0, Math.round(box.x))
  const y = Math.max(0, Math.round(box.y))
  const width = Math.min(picture.width, Math.round(box.x + box.width)) - x
  const height = Math.min(picture.height, Math.round(box.y + box.height)) - y
  return width >= 8 && height >= 8 ? { x, y, width, height } : null
}

/** A box grown by a share of its own size on every side. */
export const growBox = (box: Box, share: number): Box => ({
  x: box.x - box.width * share,
  y: box.y - box.height * share,
  width: box.width * (1 + 2 * share),
  height: box.height * (1 + 2 * share),
})
