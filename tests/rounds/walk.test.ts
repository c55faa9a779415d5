import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { nextDueAt, walkAt, walks } from '../../src/rounds/walk.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { LabLog, minute, smallPlan } from '../projections/log.ts'

const demo = demoLab()
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute
const [negative] = demo.machines

const running = (plan: LabPlan): LabLog => {
  const log = new LabLog(plan, start)
  log.run('neg-1', 'running', at(0), 30.48)
  return log
}
const walked = (log: LabLog, now: number): string[] => walkAt(log.lab().state, log.plan, negative!, now)?.checks.map(({ check, as }) => `${check.id} ${as}`) ?? []

describe('a round', () => {
  it('goes along the film’s path', () => {
    const log = running(demo)
    const walk = walkAt(log.lab().state, demo, negative!, at(1))!
    const order = negative!.stations.map(({ id }) => id)
    const places = walk.checks.map(({ check }) => order.indexOf(check.station))
    expect(places.length).toBeGreaterThan(15)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
  })

  it('is named by the earliest time at which one of its checks is due', () => {
    const plan = smallPlan(demo, 'neg-1-dev-temp', 'neg-1-dev-level')
    const log = running(plan)
    log.reading('neg-1-dev-level', 0, at(3))
    log.reading('neg-1-dev-temp', 21, at(5))
    expect(walkAt(log.lab().state, plan, negative!, at(70))?.dueAt).toBe(at(63))
  })

  it('takes along what falls due within a quarter of an hour, so that rounds stay together', () => {
    const plan = smallPlan(demo, 'neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-fix-level')
    const log = running(plan)
    log.reading('neg-1-dev-level', 0, at(0))
    log.reading('neg-1-fix-level', 0, at(12))
    log.reading('neg-1-dev-temp', 21, at(60))
    // Levels due at 07:00 and 07:12; the temperature, every half hour, is due at 07:30: too far off for one read so often.
    expect(walked(log, at(61))).toEqual(['neg-1-dev-level turn', 'neg-1-fix-level turn'])
    expect(walked(log, at(59))).toEqual([])
  })

  it('does not begin for what is only near', () => {
    const plan = smallPlan(demo, 'neg-1-dev-level')
    const log = running(plan)
    log.reading('neg-1-dev-level', 0, at(0))
    expect(walkAt(log.lab().state, plan, negative!, at(50))).toBeUndefined()
    expect(nextDueAt(log.lab().state, plan, at(50))).toBe(at(60))
  })

  it('asks for the repeat of what was out, and for the re-check once the dose has mixed, in their places', () => {
    const plan = smallPlan(demo, 'neg-1-fix-ph', 'neg-1-dev-temp')
    const log = running(plan)
    log.reading('neg-1-dev-temp', 21, at(0))
    const first = log.reading('neg-1-fix-ph', 4.92, at(1))
    expect(walked(log, at(3))).toEqual(['neg-1-fix-ph repeat'])
    log.reading('neg-1-fix-ph', 4.92, at(4))
    expect(walked(log, at(5))).toEqual([])
    log.acid(first, at(8))
    expect(walked(log, at(15))).toEqual([])
    expect(walked(log, at(31))).toEqual(['neg-1-dev-temp turn', 'neg-1-fix-ph recheck'])
  })

  it('of the machine that waits longest comes first', () => {
    const plan = smallPlan(demo, 'neg-1-fix-ph', 'pos-2-fix-ph')
    const log = new LabLog(plan, start)
    log.run('pos-2', 'running', at(0), 53.34)
    log.run('neg-1', 'running', at(5), 30.48)
    expect(walks(log.lab().state, plan, at(10)).map(({ machine }) => machine.id)).toEqual(['pos-2', 'neg-1'])
  })
})
