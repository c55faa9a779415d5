import { describe, expect, it } from 'vitest'
import { differences } from '../../src/reader/differences.ts'

describe('marking the doubtful figure', () => {
  it.each([
    ['7.42', '7.42', []],
    ['7.42', '7.12', [2]],
    ['7.42', '742', [1]],
    ['742', '7.42', [1]],
    ['-4', '4', [0]],
    ['4', '-4', [0]],
    ['74', '742', [1]],
    ['', '7', [0]],
  ])('of %s against %s', (text, other, places) => {
    expect(differences(text, other)).toEqual(places)
  })
})
