import type { GrayImage } from './picture.ts'

/** The line as a binary PGM file, the plainest picture that the recogniser opens: a header and the bytes as they are. */
export const pgm = ({ width, height, data }: GrayImage): Uint8Array => {
  // The comment pushes the pixels past the first 500 bytes, in which tesseract.js looks for a camera's rotation mark.
  const header = `P5\n#${' '.repeat(500)}\n${width} ${height}\n255\n`
  const file = new Uint8Array(header.length + data.length)
  for (let i = 0; i < header.length; i++) file[i] = header.charCodeAt(i)
  file.set(data, header.length)
  return file
}
