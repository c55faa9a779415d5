import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { StripCheck } from '../../src/plan/check.ts'
import { judgeStrip } from '../../src/plan/judge-strip.ts'
import { judge } from '../../src/plan/limits.ts'

const ph = { aim: 4.5, warningLow: 4.2, warningHigh: 4.7, actionLow: 4, actionHigh: 4.8 }

// Warning and action limits as in control-chart practice; the words are those of ISO 7870, the figures are the demo's.
describe('a verdict', () => {
  it.each([
    [4.5, 'IN', 'onAim'], [4.7, 'IN', 'high'], [4.71, 'WARN', 'high'], [4.8, 'WARN', 'high'], [4.81, 'ACT', 'high'],
    [4.2, 'IN', 'low'], [4.19, 'WARN', 'low'], [4, 'WARN', 'low'], [3.99, 'ACT', 'low'],
  ])('of %d is %s, %s', (value, verdict, side) => expect(judge(ph, value)).toEqual({ verdict, side }))

  it('is decided on decimal values: 0.1 + 0.2 lies on a limit of 0.3', () => {
    expect(judge({ aim: 0, warningHigh: 0.3, actionHigh: 0.3 }, 0.1 + 0.2).verdict).toBe('IN')
  })

  it('has no upper side for sulfite and no lower one for silver', () => {
    expect(judge({ aim: 12, warningLow: 10, actionLow: 8 }, 40)).toEqual({ verdict: 'IN', side: 'high' })
    expect(judge({ aim: 0.8, warningHigh: 1, actionHigh: 2 }, 0)).toEqual({ verdict: 'IN', side: 'low' })
  })

  it('never gets better further from the aim', () => {
    const rank = { IN: 0, WARN: 1, ACT: 2 }
    fc.assert(
      fc.property(fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true }), fc.constantFrom(-1, 1), (a, b, sign) => {
        const [near, far] = a < b ? [a, b] : [b, a]
        expect(rank[judge(ph, ph.aim + sign * far).verdict]).toBeGreaterThanOrEqual(rank[judge(ph, ph.aim + sign * near).verdict])
      }),
    )
  })
})

describe('the verdict of a strip', () => {
  const check = demoLab().checks.find(({ id }) => id === 'neg-1-strip') as StripCheck

  it('is the worst of its figures', () => {
    expect(judgeStrip(check, { baseFog: 0.25, speed: -2.1, gamma: 0.65 }).verdict).toBe('IN')
    expect(judgeStrip(check, { baseFog: 0.27, speed: -2.1, gamma: 0.65 }).verdict).toBe('WARN')
    expect(judgeStrip(check, { baseFog: 0.27, speed: -2.1, gamma: 0.69 })).toMatchObject({ verdict: 'ACT', figures: { gamma: { verdict: 'ACT', side: 'high' }, baseFog: { verdict: 'WARN' } } })
  })

  it('says nothing of figures that the plan has no limits for', () => {
    const judged = judgeStrip(check, { baseFog: 0.25, speed: -2.1, gamma: 0.65, contrast: 99 })
    expect(judged.verdict).toBe('IN')
    expect(Object.keys(judged.figures)).toEqual(['baseFog', 'speed', 'gamma'])
    expect(judgeStrip({ ...check, steps: undefined }, { contrast: 99 })).toEqual({ verdict: 'IN', figures: {} })
  })

  it('is not in limits when the steps did not give one of its figures', () => {
    expect(judgeStrip(check, { baseFog: 0.25, speed: -2.1 })).toMatchObject({ verdict: 'ACT', figures: { baseFog: { verdict: 'IN' }, speed: { verdict: 'IN' } } })
  })
})
