import { describe, expect, it } from 'vitest'
import { cutOuts } from '../../src/reader/cut-outs.ts'
import { lineHeight } from '../../src/reader/line.ts'
import { cleanDisplay, wholeOf } from './drawing.ts'

describe('cutting out the line of figures', () => {
  it.each([-12, -7, -2, 0, 3, 9, 13])('finds a lean of %d°', (turnDegrees) => {
    const pixels = cleanDisplay('280.53', 4, { turnDegrees })
    const { skewRadians } = cutOuts(pixels, wholeOf(pixels))
    expect(Math.abs((skewRadians * 180) / Math.PI - turnDegrees)).toBeLessThanOrEqual(1)
  })

  it('gives the same dark ink for light figures on dark', () => {
    const pixels = cleanDisplay('280.53', 4)
    const reversed = { ...pixels, data: pixels.data.map((value, i) => (i % 4 === 3 ? value : 255 - value)) }
    const [one, other] = [cutOuts(pixels, wholeOf(pixels)).line('band'), cutOuts(reversed, wholeOf(reversed)).line('band')]
    expect(one.height).toBe(lineHeight)
    expect(other.width).toBe(one.width)
    const furthest = one.data.reduce((most, value, i) => Math.max(most, Math.abs(value - other.data[i]!)), 0)
    expect(furthest).toBeLessThanOrEqual(6)
  })

  it('keeps the figures whole and leaves the rest of the box out', () => {
    const pixels = cleanDisplay('280.53', 4)
    const { band } = cutOuts(pixels, wholeOf(pixels))
    // The box is 240 pixels high, scaled to 91; the figures stand from 60 to 180.
    expect(band?.y).toBeGreaterThan(18)
    expect(band?.y).toBeLessThan(28)
    expect(band?.height).toBeGreaterThan(38)
    expect(band?.height).toBeLessThan(54)
  })
})
