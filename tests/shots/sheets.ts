import { join } from 'node:path'
import sharp from 'sharp'

export interface Shot {
  name: string
  file: string
  width: number
  height: number
}

const gap = 16
const caption = 28
/** A sheet is looked at on one screen: about so many pixels a side. */
const side = 1568

const captionOf = (name: string, width: number): Buffer =>
  Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${caption}"><text x="2" y="20" font-family="sans-serif" font-size="17" fill="#fff">${name.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text></svg>`)

/** Contact sheets: a column for each screen, its themes one below the other; as many columns as a sheet can hold and still be read. */
export const writeSheets = async (folder: string, name: string, screens: readonly (readonly Shot[])[]): Promise<string[]> => {
  const written: string[] = []
  const first = screens[0]?.[0]
  if (!first) return written
  const scale = first.width > 700 ? 0.55 : 1
  const cell = Math.round(first.width * scale)
  const columns = Math.max(1, Math.floor((side - gap) / (cell + gap)))
  for (let from = 0; from < screens.length; from += columns) {
    const some = screens.slice(from, from + columns)
    const parts: { input: Buffer; left: number; top: number }[] = []
    let bottom = 0
    for (const [column, shots] of some.entries()) {
      const left = gap + column * (cell + gap)
      let top = gap
      for (const shot of shots) {
        const height = Math.round(shot.height * scale)
        parts.push({ input: captionOf(shot.name, cell), left, top })
        parts.push({ input: await sharp(join(folder, shot.file)).resize({ width: cell, height, fit: 'fill' }).png().toBuffer(), left, top: top + caption })
        top += caption + height + gap
      }
      bottom = Math.max(bottom, top)
    }
    const file = `sheet-${name}-${String(written.length + 1).padStart(2, '0')}.png`
    await sharp({ create: { width: gap + some.length * (cell + gap), height: bottom, channels: 3, background: '#777' } }).composite(parts).png({ palette: true, quality: 90 }).toFile(join(folder, file))
    written.push(file)
  }
  return written
}
