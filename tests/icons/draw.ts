/** Draws the PNG icons from their SVG sources: `npx tsx tests/icons/draw.ts`. Run it after changing a source; the results are kept in git. */
import sharp from 'sharp'

const icons = new URL('../../icons/', import.meta.url).pathname

const drawings = [
  ['icon', 192, 'icon-192'],
  ['icon', 512, 'icon-512'],
  ['maskable', 512, 'maskable-512'],
  ['monochrome', 512, 'monochrome-512'],
  // Apple rounds the corners itself and shows no transparency.
  ['maskable', 180, 'apple-touch-icon'],
] as const

for (const [source, pixels, name] of drawings) {
  await sharp(`${icons}${source}.svg`, { density: 72 * (pixels / 512) * 2 }).resize(pixels, pixels).png({ palette: true, compressionLevel: 9 }).toFile(`${icons}${name}.png`)
}
