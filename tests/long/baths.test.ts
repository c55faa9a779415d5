import { describe, expect, it } from 'vitest'
import { shift, shifts, summary, tanks, type Lot, type Policy, type Tank } from '../simulate/baths.ts'

const runs = 1000
const of = (tank: Tank, policy: Policy, lot: Lot) => summary(shifts(tank, policy, { runs, lot }))

describe.each(tanks.map((tank) => [tank.name, tank] as const))(`%s, ${runs} shifts`, (_, tank) => {
  it('is back in limits in at most three portions in 95 % of shifts, no worse than with full doses, and rarely stopped for nothing', () => {
    const staged = of(tank, 'stagedAndLearned', 'right')
    const full = of(tank, 'singleFullDoses', 'right')
    expect(staged.withinThree).toBeGreaterThanOrEqual(0.95)
    expect(staged.withinThree).toBeGreaterThanOrEqual(full.withinThree - 0.005)
    expect(staged.leftLimitsBelow).toBeLessThanOrEqual(0.01)
    expect(staged.stopped).toBeLessThanOrEqual(0.05)
    expect(staged.ruined).toBe(0)
  })

  it('stops a lot that is water in every shift, and one of half strength in nine of ten at the least', () => {
    expect(of(tank, 'stagedAndLearned', 'water')).toMatchObject({ stopped: 1, learned: 0, ruined: 0 })
    const half = of(tank, 'stagedAndLearned', 'halfStrength')
    expect(half.stopped).toBeGreaterThanOrEqual(0.9)
    expect(half.learned).toBeLessThanOrEqual(0.1)
  })

  it('never lets a lot of double strength throw the bath far past its aim, as full doses do', () => {
    const staged = of(tank, 'stagedAndLearned', 'doubleStrength')
    const full = of(tank, 'singleFullDoses', 'doubleStrength')
    expect(staged.meanOvershoot).toBeLessThan(full.meanOvershoot / 5)
    expect(staged.leftLimitsBelow).toBeLessThan(0.04)
    expect(staged.ruined).toBe(0)
  })
})

it('stops acid of double strength in a fixing bath in 98 shifts of 100', () => {
  const staged = of(tanks[0]!, 'stagedAndLearned', 'doubleStrength')
  expect(staged.stopped).toBeGreaterThanOrEqual(0.98)
  expect(staged.learned).toBeLessThanOrEqual(0.02)
})

// Boric acid moves this developer by a tenth of a pH, ten steps of the meter: what one excursion cannot tell, the next adds to. What is never told acts within the bounds,
// drift of the bath included, and is learned as such.
it('stops boric acid of double strength in three shifts of four, and in five of six by the sixth excursion', () => {
  const [, developer] = tanks
  expect(of(developer!, 'stagedAndLearned', 'doubleStrength').stopped).toBeGreaterThanOrEqual(0.75)
  const six = summary(Array.from({ length: runs }, (_, seed) => shift(developer!, 'stagedAndLearned', seed + 1, 'doubleStrength', 6)))
  expect(six.stopped).toBeGreaterThanOrEqual(0.84)
  expect(six.learned).toBeLessThanOrEqual(0.15)
})
