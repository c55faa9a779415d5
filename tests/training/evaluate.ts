import { clampBox, growBox } from '../../src/reader/picture.ts'
import { readMeter, type MeterReading } from '../../src/reader/reader.ts'
import type { Recognise } from '../../src/reader/recognised.ts'
import { scene, type Scene } from './scene.ts'
import { styles, type Style } from './styles.ts'

/** Seeds of the three sets. They never meet: training takes 1 upwards, choices (thresholds, passes) are made on validation only. */
export const seeds = { training: 1, validation: 500_000, evaluation: 900_000 } as const

/** A person's box is too large, on every side, by about this share of the figures. */
export const looseness = 0.25

export interface Score {
  pictures: number
  exact: number
  refused: number
  certain: number
  certainWrong: number
}

export interface Evaluated {
  scene: Pick<Scene, 'seed' | 'style' | 'heldOut' | 'text'>
  reading: MeterReading
  milliseconds: number
}

/** The scene number `index` of a set: styles in turn, every fifth of each with a font that training never saw. */
export const setScene = (first: number, index: number): Promise<Scene> => scene(first + index, { style: styles[index % styles.length]!, heldOut: Math.floor(index / styles.length) % 5 === 4 })

export const evaluate = async (recognise: Recognise, first: number, count: number, clock: () => number): Promise<Evaluated[]> => {
  const out: Evaluated[] = []
  for (let index = 0; index < count; index++) {
    const { pixels, box, ...rest } = await setScene(first, index)
    const guide = clampBox(growBox(box, looseness), pixels)
    if (!guide) throw new Error(`scene ${rest.seed} has no figures on it`)
    const began = clock()
    const reading = await readMeter(pixels, guide, null, recognise)
    out.push({ scene: rest, reading, milliseconds: clock() - began })
  }
  return out
}

export const scoreOf = (all: readonly Evaluated[]): Score => ({
  pictures: all.length,
  exact: all.filter(({ scene: { text }, reading }) => reading.text === text).length,
  refused: all.filter(({ reading }) => reading.refusal).length,
  certain: all.filter(({ reading }) => reading.certain).length,
  certainWrong: all.filter(({ scene: { text }, reading }) => reading.certain && reading.text !== text).length,
})

/** All, each style, and the fonts that training never saw. */
export const scores = (all: readonly Evaluated[]): Record<'all' | 'unseenFonts' | Style, Score> => {
  const table: Record<string, Score> = { all: scoreOf(all), unseenFonts: scoreOf(all.filter((one) => one.scene.heldOut)) }
  for (const style of styles) table[style] = scoreOf(all.filter((one) => one.scene.style === style))
  return table as Record<'all' | 'unseenFonts' | Style, Score>
}
