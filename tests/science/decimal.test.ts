import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { above, below, outside, same, tidy } from '../../src/science/decimal.ts'

/** Readings as they are keyed: whole hundredths up to 10 000. */
const reading = fc.integer({ min: -1_000_000, max: 1_000_000 }).map((hundredths) => hundredths / 100)

describe('a value and its limit', () => {
  it('are compared as decimals, not as binary fractions', () => {
    expect(0.1 + 0.2 > 0.3).toBe(true)
    expect(above(0.1 + 0.2, 0.3)).toBe(false)
    expect(above(3.0000000004, 3)).toBe(false)
    expect(below(1.1 * 3, 3.3)).toBe(false)
    expect(above(3.01, 3)).toBe(true)
  })

  it('a value on a limit is inside it', () => {
    expect(outside(0.85, { lower: 0.75, upper: 0.85 })).toBe(false)
    expect(outside(0.36 + 0.4 - 0.01, { lower: 0.75, upper: 0.85 })).toBe(false)
    expect(outside(0.851, { lower: 0.75, upper: 0.85 })).toBe(true)
  })

  it('are never above and below each other at once, and exactly one of three holds', () => {
    fc.assert(fc.property(reading, reading, (value, limit) => [above(value, limit), below(value, limit), same(value, limit)].filter(Boolean).length === 1))
  })

  it('keep their order when a sum of decimals comes by another way', () => {
    fc.assert(
      fc.property(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: 1, max: 50 }), (hundredths, parts) => {
        const limit = (hundredths * parts) / 100
        const summed = Array.from({ length: parts }, () => hundredths / 100).reduce((sum, each) => sum + each, 0)
        expect(same(summed, limit)).toBe(true)
      }),
    )
  })

  it('a hundredth more is more', () => {
    fc.assert(fc.property(reading, (value) => above(tidy(value + 0.01), value) && below(value, tidy(value + 0.01))))
  })
})

describe('a tidied difference', () => {
  it('is the decimal one would write', () => {
    expect(tidy(0.66 - 0.6)).toBe(0.06)
    expect(tidy(1000.1 - 1000)).toBe(0.1)
    expect(tidy(2.11 * 10)).toBe(21.1)
  })
})
