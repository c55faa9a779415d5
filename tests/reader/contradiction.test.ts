import { describe, expect, it } from 'vitest'
import { contradicts } from '../../src/reader/contradiction.ts'

describe('the second opinion of the segments', () => {
  it.each([
    ['7.42', '7.42', 0.6, false],
    ['7.42', '7.48', 0.6, true],
    // A guess is not heard.
    ['7.42', '7.48', 0.1, false],
    // A frame taken for a 1, a unit taken for a figure.
    ['7.42', '17.42', 0.6, false],
    ['7.42', '7.428', 0.6, false],
    // A point or minus it did not see.
    ['-7.42', '742', 0.6, false],
    // One it did see.
    ['742', '7.42', 0.6, true],
    ['74.2', '7.42', 0.6, true],
    ['7.42', '-7.42', 0.6, true],
  ])('on %s says %s with margin %f', (text, seen, margin, contradiction) => {
    expect(contradicts(text, { text: seen, margin })).toBe(contradiction)
  })

  it('is heard on other figures from a lower margin where the display is known to be of segments, and not at all where it is not', () => {
    const seen = { text: '7.48', margin: 0.4 }
    expect(contradicts('7.42', seen)).toBe(false)
    expect(contradicts('7.42', seen, 'segments')).toBe(true)
    expect(contradicts('7.42', { ...seen, margin: 0.9 }, 'other')).toBe(false)
    expect(contradicts('748', { ...seen, text: '7.48' })).toBe(true)
  })

  it('says nothing when it could not read', () => {
    expect(contradicts('7.42', null)).toBe(false)
  })
})
