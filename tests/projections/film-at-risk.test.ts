import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { filmAtRisk, filmAtRiskOf } from '../../src/projections/film-at-risk.ts'
import { holdsAsked } from '../../src/projections/holding.ts'
import { metresRun } from '../../src/projections/machines.ts'
import { LabLog, minute, smallPlan } from './log.ts'

const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-scratches', 'neg-1-strip', 'pos-2-fix-ph')
const [negative, positive] = plan.machines
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute
const feet = (metres: number): number => metres / 0.3048

const fresh = (): LabLog => {
  const log = new LabLog(plan, start)
  log.run('neg-1', 'running', at(0), 30.48)
  log.run('pos-2', 'running', at(0), 53.34)
  return log
}

describe('film run', () => {
  // Trade arithmetic: 100 ft/min for 30 min is 3,000 ft, 175 ft/min for 30 min is 5,250 ft.
  it('is speed × time: 3,000 ft of negative and 5,250 ft of positive in half an hour', () => {
    const { machines } = fresh().lab().state
    expect(feet(metresRun(machines[negative!.id], at(0), at(30)))).toBeCloseTo(3000, 6)
    expect(feet(metresRun(machines[positive!.id], at(0), at(30)))).toBeCloseTo(5250, 6)
  })

  it('does not count standstill, leader and start-up, and follows the speed', () => {
    const log = fresh()
    log.run('neg-1', 'stopped', at(10))
    log.run('neg-1', 'startUp', at(20), 10)
    log.run('neg-1', 'running', at(30), 15.24)
    const machine = log.lab().state.machines[negative!.id]
    expect(feet(metresRun(machine, at(0), at(40)))).toBeCloseTo(1000 + 500, 6)
  })
})

describe('film at risk', () => {
  it('of an exception counts from the last good reading of its check, and grows until it is closed', () => {
    const log = fresh()
    const good = log.reading('neg-1-fix-ph', 4.75, at(10))
    const first = log.reading('neg-1-fix-ph', 4.92, at(70))
    log.reading('neg-1-fix-ph', 4.91, at(72))
    const exception = log.lab().state.exceptions.all[first]!
    const risk = filmAtRiskOf(log.lab().state, exception, at(100))
    expect(risk).toMatchObject({ kind: 'inDoubt', since: at(10), check: 'neg-1-fix-ph', good })
    expect(feet(risk.metres)).toBeCloseTo(9000, 6)
    log.reading('neg-1-fix-ph', 4.5, at(110))
    const { state } = log.lab()
    expect(feet(filmAtRiskOf(state, state.exceptions.all[first]!, at(200)).metres)).toBeCloseTo(10_000, 6)
  })

  it('where the check was never good is everything that has run', () => {
    const log = fresh()
    const first = log.reading('neg-1-fix-ph', 4.92, at(30))
    const { state } = log.lab()
    const risk = filmAtRiskOf(state, state.exceptions.all[first]!, at(30))
    expect(risk.good).toBeUndefined()
    expect(feet(risk.metres)).toBeCloseTo(3000, 6)
  })

  it('on a machine where nothing is out runs since a check that can hold it was last good', () => {
    const log = fresh()
    log.look('neg-1-scratches', true, at(20))
    const held = log.reading('neg-1-dev-temp', 21, at(30))
    // The level cannot hold the machine, so that it is good proves nothing here.
    log.reading('neg-1-dev-level', 0, at(40))
    const risk = filmAtRisk(log.lab().state, plan, negative!, at(50))
    expect(risk).toMatchObject({ kind: 'routine', since: at(30), check: 'neg-1-dev-temp', good: held })
    expect(feet(risk.metres)).toBeCloseTo(2000, 6)
  })

  it('on a machine with several things out is the longest of them, and no business of the other machine', () => {
    const log = fresh()
    log.reading('neg-1-fix-ph', 4.5, at(5))
    log.reading('neg-1-dev-temp', 21, at(20))
    log.reading('neg-1-dev-temp', 21.4, at(40))
    log.reading('neg-1-fix-ph', 4.95, at(42))
    expect(filmAtRisk(log.lab().state, plan, negative!, at(60))).toMatchObject({ kind: 'inDoubt', since: at(5), check: 'neg-1-fix-ph' })
    expect(filmAtRisk(log.lab().state, plan, positive!, at(60)).kind).toBe('routine')
  })

  it('stays with a hold when its exception has closed: the film to tag is the same until the machine is released', () => {
    const log = fresh()
    log.look('neg-1-scratches', true, at(10))
    const scratch = log.look('neg-1-scratches', false, at(30))
    const hold = log.say({ kind: 'hold', data: { machine: negative!.id, reason: 'scratch', exception: scratch }, at: at(31) })
    log.run('neg-1', 'standby', at(35))
    log.look('neg-1-scratches', true, at(50))
    const risk = filmAtRisk(log.lab().state, plan, negative!, at(60))
    expect(risk).toMatchObject({ kind: 'inDoubt', since: at(10) })
    expect(feet(risk.metres)).toBeCloseTo(2500, 6)
    log.say({ kind: 'release', data: { hold, reason: 'clean' }, at: at(61) })
    expect(filmAtRisk(log.lab().state, plan, negative!, at(62)).kind).toBe('routine')
  })
})

describe('a hold is asked for', () => {
  const asked = (log: LabLog): string[] => holdsAsked(log.lab().state, plan).map(({ exception, reason }) => `${exception.check} ${reason}`)

  it('at once for a scratch', () => {
    const log = fresh()
    log.look('neg-1-scratches', false, at(10))
    expect(asked(log)).toEqual(['neg-1-scratches immediate'])
  })

  it('for a strip when the second agrees', () => {
    const log = fresh()
    log.strip('neg-1-strip', 'ACT', at(10))
    expect(asked(log)).toEqual([])
    log.strip('neg-1-strip', 'ACT', at(40))
    expect(asked(log)).toEqual(['neg-1-strip stripConfirmed'])
  })

  // Developer beyond ± 0.5 °C holds; from memory and common practice, as the demo says.
  it('for developer temperature beyond half a degree, confirmed; nearer it is corrected while film runs', () => {
    const log = fresh()
    log.reading('neg-1-dev-temp', 21.4, at(10))
    log.reading('neg-1-dev-temp', 21.4, at(12))
    expect(asked(log)).toEqual([])
    log.reading('neg-1-dev-temp', 21.6, at(20))
    expect(asked(log)).toEqual(['neg-1-dev-temp beyondHoldLimit'])
  })

  it('not for one bad reading alone, and no more once the machine is held', () => {
    const log = fresh()
    const first = log.reading('neg-1-dev-temp', 23, at(10))
    expect(asked(log)).toEqual([])
    log.reading('neg-1-dev-temp', 23, at(12))
    expect(asked(log)).toHaveLength(1)
    log.say({ kind: 'hold', data: { machine: negative!.id, reason: 'too warm', exception: first }, at: at(13) })
    expect(asked(log)).toEqual([])
  })
})
