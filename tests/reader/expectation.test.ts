import { describe, expect, it } from 'vitest'
import { misfits } from '../../src/reader/expectation.ts'

const developer = { minimum: 0, maximum: 14, decimals: 2, recent: [10.02, 10.05, 10.03, 10.01] }

describe('what a check expects of its reading', () => {
  it('finds nothing in a usual reading', () => {
    expect(misfits('10.04', developer)).toEqual([])
  })

  it('finds a lost point by range, by decimals and by the last readings', () => {
    expect(misfits('1004', developer)).toEqual(['outOfRange', 'wrongDecimals', 'unlikeRecent'])
  })

  it('lets a steady bath change by a tenth of the range', () => {
    expect(misfits('8.80', developer)).toEqual([])
    expect(misfits('8.50', developer)).toEqual(['unlikeRecent'])
  })

  it('does not judge by two readings', () => {
    expect(misfits('4.00', { minimum: 0, maximum: 14, recent: [10, 10.1] })).toEqual([])
  })
})
