import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { ReadingCheck } from '../../src/plan/check.ts'
import { forecastOf } from '../../src/projections/forecast.ts'
import { hour } from './log.ts'

const plan = demoLab()
const checkOf = (id: string): ReadingCheck => plan.checks.find((it): it is ReadingCheck => it.kind === 'reading' && it.id === id)!
const bromide = checkOf('neg-1-dev-bromide')
const tank = checkOf('neg-1-replenisher-left')
/** 0.7 and up, as in the worked example of the calculation. */
const rising = [0.7, 0.7, 0.72, 0.71, 0.73, 0.73].map((value, index) => ({ time: index * 2 * hour, value }))

describe('what is coming', () => {
  it('a bromide that rises meets its warning limit, with an interval about it', () => {
    const found = forecastOf(rising, [], bromide, bromide.limits)!
    expect(found.meets).toBe('warning')
    expect(found.limit).toBe(0.75)
    // 5.652 h after the last reading at 10 h, worked by hand.
    expect((found.at - 10 * hour) / hour).toBeCloseTo(5.652, 2)
    expect(found.earliest).toBeLessThan(found.at)
    expect(found.latest).toBeGreaterThan(found.at)
  })

  it('looks back no further than the last change of the bath; a shift that begins changes nothing', () => {
    expect(forecastOf(rising, [{ kind: 'add', time: 5 * hour }], bromide, bromide.limits)).toBeUndefined()
    expect(forecastOf(rising, [{ kind: 'shift', time: 5 * hour }], bromide, bromide.limits)).toBeDefined()
  })

  it('says nothing where nothing drifts, and nothing further ahead than twice what the readings reach back', () => {
    expect(forecastOf(rising.map(({ time }, index) => ({ time, value: 0.7 + (index % 2) * 0.01 })), [], bromide, bromide.limits)).toBeUndefined()
    expect(forecastOf(rising.map(({ time }, index) => ({ time, value: 0.7 + index * 0.0005 + (index % 2) * 0.0001 })), [], bromide, bromide.limits)).toBeUndefined()
  })

  it('a reading between warning and action limit looks on to the action limit; beyond it there is nothing to foretell', () => {
    const warn = rising.map(({ time, value }) => ({ time, value: value + 0.045 }))
    expect(forecastOf(warn, [], bromide, bromide.limits)!.meets).toBe('action')
    expect(forecastOf(rising.map(({ time, value }) => ({ time, value: value + 0.1 })), [], bromide, bromide.limits)).toBeUndefined()
  })

  it('a replenisher tank runs out at the level at which the pump draws air, counted since it was filled', () => {
    const levels = [120, 90, 60, 400, 370, 341, 309, 280, 250].map((value, index) => ({ time: index * 2 * hour, value }))
    const found = forecastOf(levels, [], tank, tank.limits)!
    expect(found).toMatchObject({ meets: 'empty', limit: 10, points: 6 })
    // About 15 L an hour: 240 L left above the 10 L at which the machine is held.
    expect((found.at - 16 * hour) / hour).toBeCloseTo(16, 0)
  })

  it('a filter’s pressure drop meets its limit', () => {
    const filter: ReadingCheck = { ...tank, quantity: 'pressureDrop', unit: 'kPa', limits: { aim: 20, actionHigh: 80 } }
    const drops = [20, 26, 31, 35, 41, 45].map((value, index) => ({ time: index * 2 * hour, value }))
    expect(forecastOf(drops, [], filter, filter.limits)).toMatchObject({ meets: 'filter', limit: 80 })
  })
})
