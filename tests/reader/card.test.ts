import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { modelFile } from '../../src/terminal/reader-engine.ts'
import { dotFonts, printFonts, segmentFonts } from '../training/fonts.ts'
import { seeds } from '../training/evaluate.ts'

const card = JSON.parse(readFileSync(new URL('../../src/reader/model/figures.json', import.meta.url), 'utf8')) as {
  bytes: number
  sha256: string
  fonts: { family: string; licence: string }[]
  pictures: string
  seeds: { training: number; trainingScenes: number }
  scores: { validation: { all: { pictures: number } } }
}

describe("the model's card", () => {
  it('belongs to the model that ships', () => {
    const bytes = readFileSync(modelFile)
    expect(card.bytes).toBe(bytes.length)
    expect(card.sha256).toBe(createHash('sha256').update(bytes).digest('hex'))
  })

  it('says so where a person reads it', () => {
    const page = readFileSync(new URL('../../src/reader/model/README.md', import.meta.url), 'utf8')
    expect(page).toContain(card.sha256)
    for (const { family } of card.fonts) expect(page).toContain(family)
  })

  it('names every font with its licence', () => {
    expect(card.fonts.map((font) => font.family)).toEqual([...segmentFonts, ...dotFonts, ...printFonts].map((font) => font.family))
    for (const font of card.fonts) expect(font.licence).toBe('SIL OFL 1.1')
  })

  it('keeps the seeds of training, validation and evaluation apart', () => {
    expect(card.seeds.training + card.seeds.trainingScenes).toBeLessThan(seeds.validation)
    expect(seeds.validation + card.scores.validation.all.pictures).toBeLessThan(seeds.evaluation)
  })

  it('claims no score on photographs, since there are none', () => {
    expect(card.pictures).toContain('Drawn only')
    expect(Object.keys(card.scores)).toEqual(['validation', 'evaluation'])
  })
})
