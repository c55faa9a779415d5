import { describe, expect, it } from 'vitest'
import { cutOuts } from '../../src/reader/cut-outs.ts'
import { readSegments } from '../../src/reader/segments.ts'
import { cleanDisplay, wholeOf } from './drawing.ts'

const seen = (text: string, seed: number, lean?: Parameters<typeof cleanDisplay>[2]): string | undefined => {
  const pixels = cleanDisplay(text, seed, lean)
  const cut = cutOuts(pixels, wholeOf(pixels))
  return cut.band ? readSegments(cut.level, cut.band)?.text : undefined
}

describe('the geometry of seven segments', () => {
  it('reads every figure in displays of different cut', () => {
    const texts = ['280.53', '946.2', '38.57', '-20.9', '6480', '5.93']
    const tried = texts.flatMap((text) => Array.from({ length: 10 }, (_, seed) => ({ text, seed, read: seen(text, seed + 1) })))
    const wrong = tried.filter(({ text, read }) => read !== text)
    expect(wrong.filter(({ read }) => read !== undefined).map(({ text, read }) => `${text} as ${String(read)}`)).toEqual([])
    expect(wrong.length).toBeLessThanOrEqual(6)
  })

  it('reads slanted and turned displays', () => {
    expect(seen('38.57', 3, { slant: 0.15 })).toBe('38.57')
    expect(seen('38.57', 3, { turnDegrees: 8 })).toBe('38.57')
  })

  it('keeps silent about what no segments can show', () => {
    expect(seen('HELP', 2)).toBeUndefined()
  })
})
