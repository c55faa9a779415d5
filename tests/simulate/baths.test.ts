import { describe, expect, it } from 'vitest'
import { shifts, summary, tanks } from './baths.ts'

// A modelled bath with hidden response, drift and a noisy meter, three times out in a shift; the thousand runs are in tests/long.
describe.each(tanks.map((tank) => [tank.name, tank] as const))('%s', (_, tank) => {
  const runs = 30
  const right = summary(shifts(tank, 'stagedAndLearned', { runs }))

  it('is brought back in limits in at most three portions', () => {
    expect(right.withinThree).toBeGreaterThanOrEqual(0.9)
    expect(right.ruined).toBe(0)
    expect(right.learned).toBeGreaterThanOrEqual(0.9)
  })

  it('is stopped by a lot that is water, and learns nothing from it', () => {
    const water = summary(shifts(tank, 'stagedAndLearned', { runs, lot: 'water' }))
    expect(water).toMatchObject({ stopped: 1, learned: 0, ruined: 0 })
  })

  it('is kept from the other side by half doses where the lot is twice as strong, which single full doses are not', () => {
    const staged = summary(shifts(tank, 'stagedAndLearned', { runs, lot: 'doubleStrength' }))
    const full = summary(shifts(tank, 'singleFullDoses', { runs, lot: 'doubleStrength' }))
    expect(staged.meanOvershoot).toBeLessThan(full.meanOvershoot / 4)
    expect(staged.stopped).toBeGreaterThan(0.8)
  })
})

it('runs the same shift again from the same seed', () => {
  const [tank] = tanks
  expect(shifts(tank!, 'stagedAndLearned', { runs: 2, from: 7 })).toEqual(shifts(tank!, 'stagedAndLearned', { runs: 2, from: 7 }))
})
