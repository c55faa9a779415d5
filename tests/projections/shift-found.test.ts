import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { shiftAt, type ShiftSpan } from '../../src/plan/shift-time.ts'
import { isOfShift } from '../../src/projections/shift-lines.ts'
import { shiftPage, type ShiftPage } from '../../src/projections/shift-page.ts'
import { hour, LabLog, minute, smallPlan } from './log.ts'

const demo = demoLab()
const effluent = demo.checks.find((check) => check.kind === 'reading' && demo.machines.some(({ stations }) => stations.some(({ id, kind }) => id === check.station && kind === 'effluent')))!
const plan = smallPlan(demo, 'neg-1-fix-ph', effluent.id)
const start = Date.parse('2026-01-12T06:00:00Z')
const at = (minutes: number): number => start + minutes * minute
const span: ShiftSpan = shiftAt(plan, start)
const later = shiftAt(plan, span.to)
const pageOf = (log: LabLog, of = span, now = span.to + 30 * minute): ShiftPage => shiftPage({ lab: log.lab(), plan, span: of, now })
const running = (): LabLog => {
  const log = new LabLog(plan, start - hour)
  log.run('neg-1', 'running', at(0), 30.48)
  return log
}

describe('an incident', () => {
  const told = (log: LabLog) => log.say({ kind: 'note', data: { text: 'Splice parted in the dryer', about: 'incident' }, at: at(100) })
  const note = (log: LabLog, of: ReturnType<typeof told>, person: string, minutes: number) => log.say({ kind: 'acknowledge', data: { of, remark: 'Rollers looked at, footage tagged' }, at: at(minutes), person })

  it('stands in the way of a signature until a supervisor has taken note of it', () => {
    const log = running()
    const incident = told(log)
    expect(pageOf(log).blockers).toContainEqual({ code: 'incidentNotSeen', ref: incident })
    note(log, incident, 'marta', 110)
    expect(pageOf(log).blockers).toContainEqual({ code: 'incidentNotSeen', ref: incident })
    const seen = note(log, incident, 'helena', 120)
    expect(pageOf(log).blockers).not.toContainEqual({ code: 'incidentNotSeen', ref: incident })
    expect(pageOf(log).incidents).toMatchObject([{ line: { id: incident }, seen: { id: seen, person: 'helena' } }])
  })

  it('and its acknowledgement, given after the shift, are of the same shift, so that one signature covers both', () => {
    const log = running()
    const incident = told(log)
    const seen = note(log, incident, 'helena', 495)
    expect(isOfShift(log.lab().ledger, span, seen)).toBe(true)
    expect(pageOf(log).digestText).toContain(seen)
  })

  it('that was withdrawn is no incident', () => {
    const log = running()
    log.say({ kind: 'withdraw', data: { ref: told(log), why: 'another machine room' }, at: at(105) })
    expect(pageOf(log).incidents).toEqual([])
  })
})

describe('what was out of limits', () => {
  const out = () => {
    const log = running()
    const first = log.reading('neg-1-fix-ph', 4.92, at(100))
    log.reading('neg-1-fix-ph', 4.92, at(102))
    return { log, first }
  }

  it('has the cause that was noted last, of its own shift even where it was said later', () => {
    const { log, first } = out()
    const cause = (text: string, minutes: number) => log.say({ kind: 'note', data: { text, about: 'cause', exception: first }, at: at(minutes) })
    cause('Carry-over', 110)
    const second = cause('Squeegee worn: developer carried over', 500)
    expect(pageOf(log).exceptions).toMatchObject([{ cause: { id: second, text: 'Squeegee worn: developer carried over' }, actions: [] }])
    expect(isOfShift(log.lab().ledger, span, second)).toBe(true)
    expect(pageOf(log).notes.map(({ id }) => id)).toContain(second)
  })

  it('that was closed by hand has its closing words for a cause', () => {
    const { log, first } = out()
    const closed = log.say({ kind: 'close', data: { exception: first, reason: 'instrumentFault', remark: 'Electrode was dry' }, at: at(120) })
    expect(pageOf(log).exceptions).toMatchObject([{ cause: { id: closed, text: 'Electrode was dry' } }])
  })

  it('has as actions what names it: a setting noted, a hold; and the minutes it was open', () => {
    const { log, first } = out()
    const set = log.say({ kind: 'note', data: { text: 'Wash opened', about: 'maintenance', exception: first }, at: at(105) })
    const hold = log.say({ kind: 'hold', data: { machine: 'neg-1' as never, reason: 'out', exception: first }, at: at(106) })
    log.reading('neg-1-fix-ph', 4.5, at(134))
    expect(pageOf(log).exceptions).toMatchObject([{ actions: [set, hold], minutesOpen: 34, isOpen: false }])
  })
})

describe('effluent and waste', () => {
  it('are summed by what and where to, with the entries behind each sum', () => {
    const log = running()
    const off = (waste: string, litres: number, destination: { to: 'recovery' } | { to: 'drum'; drum: string }, minutes: number) =>
      log.say({ kind: 'runOff', data: { station: 'neg-1-fix' as never, waste, litres, destination }, at: at(minutes) })
    const [a, b, c] = [off('usedFixing', 20, { to: 'recovery' }, 30), off('usedFixing', 12.5, { to: 'recovery' }, 60), off('iodineTitration', 0.3, { to: 'drum', drum: 'iodine' }, 70)]
    off('usedFixing', 7, { to: 'recovery' }, 490)
    const drum = log.say({ kind: 'drumOut', data: { drum: 'iodine', station: 'neg-1-fix' as never, to: 'Licensed carrier, paper 88' }, at: at(80) })
    const drain = log.reading(effluent.id, effluent.kind === 'reading' ? effluent.limits.aim : 0, at(90))
    expect(pageOf(log).waste).toMatchObject({
      runOffs: [
        { waste: 'usedFixing', litres: 32.5, destination: { to: 'recovery' }, entries: [a, b] },
        { waste: 'iodineTitration', litres: 0.3, destination: { to: 'drum', drum: 'iodine' }, entries: [c] },
      ],
      drumsOut: [{ id: drum }],
      effluent: [{ id: drain, verdict: 'IN' }],
    })
    expect(pageOf(log, later, later.to).waste.runOffs).toMatchObject([{ litres: 7 }])
  })
})
