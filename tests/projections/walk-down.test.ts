import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { walkDown, walkedOf, type WalkItem } from '../../src/projections/walk-down.ts'
import { hour, LabLog, minute, smallPlan } from './log.ts'

const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-scratches', 'ph-meter')
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute
const running = (): LabLog => {
  const log = new LabLog(plan, start - hour)
  log.run('neg-1', 'running', at(0), 30.48)
  log.look('ph-meter', true, at(1))
  return log
}
const items = (log: LabLog, minutes: number): WalkItem[] => walkDown(log.lab(), plan, at(minutes))
const of = <W extends WalkItem['what']>(all: readonly WalkItem[], what: W): Extract<WalkItem, { what: W }>[] => all.filter((it): it is Extract<WalkItem, { what: W }> => it.what === what)

describe('the walk-down for the next shift', () => {
  it('begins with every machine as it stands', () => {
    expect(of(items(running(), 10), 'machine')).toEqual(plan.machines.map(({ id }) => ({ what: 'machine', ref: id, state: id === 'neg-1' ? 'running' : 'stopped', metresPerMinute: id === 'neg-1' ? 30.48 : 0 })))
  })

  it('carries a mixing time over with its end, and afterwards asks for the re-check', () => {
    const log = running()
    const first = log.reading('neg-1-fix-ph', 4.92, at(20))
    log.reading('neg-1-fix-ph', 4.92, at(22))
    log.acid(first, at(30))
    expect(of(items(log, 35), 'exception')).toMatchObject([{ ref: first, phase: 'mixing', mixUntil: at(42) }])
    const [after] = of(items(log, 43), 'exception')
    expect(after).toMatchObject({ ref: first, phase: 'toRecheck' })
    expect(after).not.toHaveProperty('mixUntil')
    log.reading('neg-1-fix-ph', 4.5, at(44))
    expect(of(items(log, 45), 'exception')).toEqual([])
  })

  it('carries over the mixing time of an add that answers no exception', () => {
    const log = running()
    const dose = log.acid(undefined, at(30))
    expect(of(items(log, 35), 'mixing')).toEqual([{ what: 'mixing', ref: dose, station: 'neg-1-fix', until: at(42) }])
    expect(of(items(log, 42), 'mixing')).toEqual([])
    log.say({ kind: 'withdraw', data: { ref: dose, why: 'wrong bath' }, at: at(36) })
    expect(of(items(log, 37), 'mixing')).toEqual([])
  })

  it('names a hold until it is released, and a batch until it is ended', () => {
    const log = running()
    const hold = log.say({ kind: 'hold', data: { machine: 'neg-1' as never, reason: 'scratch' }, at: at(20) })
    const mix = log.say({ kind: 'mix', data: { plan: log.planId, formula: plan.formulas![0]!.id, litres: 100, station: 'neg-1-fix' as never }, at: at(21) })
    expect([of(items(log, 25), 'hold'), of(items(log, 25), 'batch')]).toMatchObject([[{ ref: hold, machine: 'neg-1' }], [{ ref: mix }]])
    log.say({ kind: 'release', data: { hold, reason: 'clean' }, at: at(30) })
    log.say({ kind: 'mixEnd', data: { mix, how: 'discarded', why: 'cloudy' }, at: at(31) })
    expect([...of(items(log, 35), 'hold'), ...of(items(log, 35), 'batch')]).toEqual([])
  })

  it('names what is late and which instrument is not to be relied on', () => {
    const log = running()
    const all = items(log, 20 * 60)
    expect(of(all, 'late').map(({ ref }) => ref)).toContain('neg-1-scratches')
    expect(of(all, 'instrument')).toMatchObject([{ ref: 'ph-meter', state: 'overdue' }])
    log.look('ph-meter', false, at(20 * 60 + 1))
    expect(of(items(log, 20 * 60 + 2), 'instrument')).toMatchObject([{ state: 'failed' }])
  })

  it('is named item by item in the hand-over that accepts it', () => {
    expect(walkedOf(items(running(), 5)).slice(0, 1)).toEqual([{ what: 'machine', ref: 'neg-1' }])
  })
})
