import { GlobalFonts } from '@napi-rs/canvas'
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'

/** A font of the drawn scenes, all under the SIL Open Font License 1.1. `trained: false` is kept for evaluation alone. */
export interface Font {
  family: string
  file: string
  trained: boolean
}

const dseg = (family: string, file: string, trained: boolean): Font => ({ family, file: `dseg/fonts/${file}.ttf`, trained })
const print = (family: string, name: string, weight: number, trained: boolean): Font => ({ family, file: `@fontsource/${name}/files/${name}-latin-${weight}-normal.woff2`, trained })

export const segmentFonts: readonly Font[] = [
  dseg('Seg Classic', 'DSEG7-Classic/DSEG7Classic-Regular', true),
  dseg('Seg Classic Bold', 'DSEG7-Classic/DSEG7Classic-Bold', true),
  dseg('Seg Classic Light', 'DSEG7-Classic/DSEG7Classic-Light', true),
  dseg('Seg Modern', 'DSEG7-Modern/DSEG7Modern-Regular', true),
  dseg('Seg Modern Bold', 'DSEG7-Modern/DSEG7Modern-Bold', true),
  dseg('Seg Modern Mini', 'DSEG7-Modern-MINI/DSEG7ModernMini-Regular', false),
]

export const dotFonts: readonly Font[] = [print('Dot Gothic', 'dotgothic16', 400, true), print('Doto Bold', 'doto', 700, true), print('Doto Black', 'doto', 900, false)]

export const printFonts: readonly Font[] = [
  print('Arimo', 'arimo', 400, true),
  print('Arimo Bold', 'arimo', 700, true),
  print('B612 Mono', 'b612-mono', 400, true),
  print('Share Tech Mono', 'share-tech-mono', 400, true),
  print('Roboto Condensed', 'roboto-condensed', 400, true),
  print('Barlow Medium', 'barlow', 500, true),
  print('IBM Plex Mono', 'ibm-plex-mono', 500, true),
  print('Rajdhani Bold', 'rajdhani', 600, true),
  print('Saira', 'saira', 500, false),
]

const require = createRequire(import.meta.url)

/** Loads every font once; throws when one is missing, since a silent fallback would draw another look. */
export const loadFonts = (): void => {
  for (const font of [...segmentFonts, ...dotFonts, ...printFonts]) {
    if (GlobalFonts.has(font.family)) continue
    if (!GlobalFonts.register(readFileSync(require.resolve(font.file)), font.family)) throw new Error(`font ${font.file} did not load`)
  }
}
