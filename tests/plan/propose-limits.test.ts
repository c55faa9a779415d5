import { describe, expect, it } from 'vitest'
import { proposeLimits } from '../../src/plan/propose-limits.ts'

/**
 * Ten flow rates of the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: mean 50.81, mean moving range 1.8778, control limits 45.8159 and 55.8041
 * (three sigma); sigma is 1.8778 ÷ 1.128 = 1.6647.
 */
const flowRates = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]
const now = { aim: 50, warningLow: 49, warningHigh: 51, actionLow: 48, actionHigh: 52 }

describe('limits from the last readings', () => {
  it('are the mean, two sigma and three sigma of the handbook’s worked example, in steps of the instrument', () => {
    const proposed = proposeLimits({ values: flowRates, step: 0.0001, now, about: 'mean' })!
    expect(proposed.limits.aim).toBeCloseTo(50.81, 4)
    expect(proposed.limits.actionLow).toBeCloseTo(45.8159, 3)
    expect(proposed.limits.actionHigh).toBeCloseTo(55.8041, 3)
    expect(proposed.limits.warningHigh! - proposed.limits.aim).toBeCloseTo(2 * 1.6647, 3)
    expect(proposed).toMatchObject({ count: 10, beyond: 0 })
  })
  it('are written as the instrument shows them', () => {
    expect(proposeLimits({ values: flowRates, step: 0.5, now, about: 'mean' })!.limits).toEqual({ aim: 51, warningLow: 47.5, warningHigh: 54.5, actionLow: 46, actionHigh: 56 })
  })
  it('lie about the aim where that is to stay', () => {
    expect(proposeLimits({ values: flowRates, step: 0.5, now, about: 'aim' })!.limits).toEqual({ aim: 50, warningLow: 46.5, warningHigh: 53.5, actionLow: 45, actionHigh: 55 })
  })
  it('leave open the side that is open: sulfite has no upper limit', () => {
    expect(proposeLimits({ values: flowRates, step: 0.5, now: { aim: 50, warningLow: 49, actionLow: 48 }, about: 'mean' })!.limits).toEqual({ aim: 51, warningLow: 47.5, actionLow: 46 })
    expect(proposeLimits({ values: flowRates, step: 0.5, now: { aim: 50, warningHigh: 51 }, about: 'mean' })!.limits).toEqual({ aim: 51, warningHigh: 54.5, actionHigh: 56 })
  })
  it('give both sides to what had only an aim', () => expect(Object.keys(proposeLimits({ values: flowRates, step: 0.5, now: { aim: 50 }, about: 'mean' })!.limits)).toHaveLength(5))
  it('are a step apart even where the process hardly moves', () => {
    const still = [21, 21, 21, 21.1, 21, 21, 21, 21, 21, 21]
    expect(proposeLimits({ values: still, step: 0.1, now: { aim: 21 }, about: 'mean' })!.limits).toEqual({ aim: 21, warningLow: 20.9, warningHigh: 21.1, actionLow: 20.8, actionHigh: 21.2 })
  })
  it('say how many readings lie beyond them', () => {
    const jump = [10, 10.1, 10, 10.1, 10, 10.1, 10, 10.1, 10, 10.1, 10, 14, 10, 10.1, 10, 10.1, 10, 10.1, 10, 10.1]
    expect(proposeLimits({ values: jump, step: 0.1, now: { aim: 10 }, about: 'mean' })!.beyond).toBe(1)
  })
  it.each([[flowRates.slice(0, 7)], [Array.from({ length: 30 }, () => 5)]])('are not made of too few readings, nor of equal ones', (values) => {
    expect(proposeLimits({ values, step: 0.1, now, about: 'mean' })).toBeUndefined()
  })
  it('measure no range across a gap', () => {
    const values = [10, 10.1, 10, 10.1, 10, 20, 20.1, 20, 20.1, 20]
    expect(proposeLimits({ values, gapsBefore: [5], step: 0.01, now, about: 'mean' })!.sigma).toBeCloseTo(0.1 / 1.128, 9)
  })
})
