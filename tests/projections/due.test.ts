import { describe, expect, it } from 'vitest'
import type { Check } from '../../src/plan/check.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { Schedule, MachineState } from '../../src/plan/schedule.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { dueChecks, type Due } from '../../src/projections/due.ts'
import { hour, LabLog, minute, smallPlan } from './log.ts'

const running: MachineState[] = ['running']

/** One check, with the schedule and the states in question. */
const planWith = (schedule: Schedule, states: MachineState[] = running): LabPlan => {
  const small = smallPlan(demoLab(), 'neg-1-fix-ph')
  return { ...small, checks: [{ ...(small.checks[0] as Check), schedule, states }] }
}
const hourly: Schedule = { kind: 'interval', minutes: 60, graceMinutes: 15 }

const winter = Date.parse('2026-01-12T06:00:00Z')
const logAt = (plan: LabPlan, start = winter): LabLog => {
  const log = new LabLog(plan, start)
  log.run('neg-1', 'running', start, 30.48)
  return log
}
const dueAt = (log: LabLog, time: number): Due | undefined => dueChecks(log.lab().state, log.plan, time)[0]
const shown = (log: LabLog, time: number): unknown => {
  const due = dueAt(log, time)
  return due && { due: new Date(due.dueAt).toISOString().slice(11, 16), status: due.status, missed: due.missed }
}

describe('a check at intervals', () => {
  it('is due when film begins to run, late after its grace, missed when the next falls due', () => {
    const log = logAt(planWith(hourly))
    expect(shown(log, winter)).toEqual({ due: '06:00', status: 'due', missed: 0 })
    expect(shown(log, winter + 15 * minute)).toEqual({ due: '06:00', status: 'due', missed: 0 })
    expect(shown(log, winter + 15 * minute + 1)).toEqual({ due: '06:00', status: 'late', missed: 0 })
    expect(shown(log, winter + 60 * minute)).toEqual({ due: '07:00', status: 'due', missed: 1 })
    expect(shown(log, winter + 200 * minute)).toEqual({ due: '09:00', status: 'late', missed: 3 })
  })

  it('falls due an interval after it was done, not an interval after it was due', () => {
    const log = logAt(planWith(hourly))
    log.reading('neg-1-fix-ph', 4.5, winter + 20 * minute)
    expect(shown(log, winter + 30 * minute)).toEqual({ due: '07:20', status: 'ahead', missed: 0 })
  })

  it('counts a reading for the minute in which it was noted', () => {
    const log = logAt(planWith(hourly))
    log.reading('neg-1-fix-ph', 4.5, winter + 40 * minute, { notedAt: '2026-01-12T06:10:00Z' })
    expect(shown(log, winter + 41 * minute)).toEqual({ due: '07:10', status: 'ahead', missed: 0 })
  })

  it('goes on over midnight', () => {
    const log = logAt(planWith(hourly))
    const late = Date.parse('2026-01-12T23:40:00Z')
    log.reading('neg-1-fix-ph', 4.5, late)
    expect(shown(log, late + hour)).toEqual({ due: '00:40', status: 'due', missed: 0 })
  })

  it('is an hour of running time when the clocks change, not an hour of the clock on the wall', () => {
    // Europe/Lisbon: forward at 01:00 UTC on 29 March 2026, back at 01:00 UTC on 25 October 2026 (last Sundays; EU Directive 2000/84/EC).
    for (const change of ['2026-03-29T01:00:00Z', '2026-10-25T01:00:00Z']) {
      const at = Date.parse(change)
      const log = logAt(planWith(hourly), at - 2 * hour)
      log.reading('neg-1-fix-ph', 4.5, at - 30 * minute)
      expect(dueAt(log, at)?.dueAt).toBe(at + 30 * minute)
      expect(dueAt(log, at)?.missed).toBe(0)
    }
  })

  it('begins anew when the machine has stood still, and a change of speed does not begin it anew', () => {
    const log = logAt(planWith(hourly))
    log.reading('neg-1-fix-ph', 4.5, winter + 10 * minute)
    log.run('neg-1', 'running', winter + 20 * minute, 29)
    expect(shown(log, winter + 30 * minute)).toMatchObject({ due: '07:10' })
    log.run('neg-1', 'stopped', winter + 40 * minute)
    expect(dueAt(log, winter + 50 * minute)).toBeUndefined()
    log.run('neg-1', 'running', winter + 55 * minute, 30.48)
    expect(shown(log, winter + 56 * minute)).toEqual({ due: '06:55', status: 'due', missed: 0 })
  })

  it('of several states does not begin anew when the machine goes from one of them to another', () => {
    const log = new LabLog(planWith(hourly, ['startUp', 'running']), winter)
    log.run('neg-1', 'startUp', winter)
    log.reading('neg-1-fix-ph', 4.5, winter + 10 * minute)
    log.run('neg-1', 'running', winter + 30 * minute, 30.48)
    expect(shown(log, winter + 35 * minute)).toMatchObject({ due: '07:10' })
  })

  it('asked for in any state is asked for of a machine that nobody has spoken of, from when the plan came into force', () => {
    const log = new LabLog(planWith(hourly, ['stopped', 'running']), winter)
    expect(shown(log, winter + 5 * minute)).toEqual({ due: '06:00', status: 'due', missed: 0 })
    log.reading('neg-1-fix-ph', 4.5, winter + 6 * minute)
    expect(shown(log, winter + 7 * minute)).toMatchObject({ due: '07:06' })
  })

  it('left out with a reason counts for the occurrence that was due', () => {
    const log = logAt(planWith(hourly))
    log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as never, due: winter, reason: 'instrumentFault' }, at: winter + 20 * minute })
    expect(shown(log, winter + 21 * minute)).toEqual({ due: '07:00', status: 'ahead', missed: 0 })
  })

  it('a reason given at the end of the shift for an old gap does not put off what is due now', () => {
    const log = logAt(planWith(hourly))
    const now = winter + 5 * hour
    log.reading('neg-1-fix-ph', 4.5, winter + 3 * hour + 10 * minute)
    expect(shown(log, now)).toMatchObject({ due: '10:10', status: 'late' })
    log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as never, due: winter + hour, reason: 'otherWork' }, at: now })
    expect(shown(log, now + 1)).toMatchObject({ due: '10:10', status: 'late' })
  })

  it('that a new plan brings is due from the plan on, not from the beginning', () => {
    const without = { ...planWith(hourly), checks: [] }
    const log = logAt(without)
    const withIt = planWith(hourly)
    log.say({ kind: 'plan', data: { plan: withIt, effectiveFrom: winter + 4 * hour }, at: winter + 3 * hour })
    const due = dueChecks(log.lab().state, withIt, winter + 4 * hour + 5 * minute)[0]!
    expect(due).toMatchObject({ dueAt: winter + 4 * hour, status: 'due', missed: 0 })
  })
})

describe('a check of once a shift', () => {
  const perShift: Schedule = { kind: 'shift', afterMinutes: 30, graceMinutes: 60 }

  it('is due so long after the shift began, and done once is done for the shift', () => {
    const log = logAt(planWith(perShift))
    expect(shown(log, winter + 10 * minute)).toEqual({ due: '06:30', status: 'ahead', missed: 0 })
    expect(shown(log, winter + 100 * minute)).toEqual({ due: '06:30', status: 'late', missed: 0 })
    log.reading('neg-1-fix-ph', 4.5, winter + 101 * minute)
    expect(dueAt(log, winter + 102 * minute)).toBeUndefined()
    expect(shown(log, winter + 8 * hour)).toEqual({ due: '14:30', status: 'ahead', missed: 0 })
  })

  it('tells how many shifts went by without it', () => {
    const log = logAt(planWith(perShift))
    log.reading('neg-1-fix-ph', 4.5, winter + hour)
    expect(shown(log, winter + 17 * hour)).toEqual({ due: '22:30', status: 'due', missed: 1 })
    expect(shown(log, winter + 25 * hour)).toMatchObject({ due: '06:30', missed: 2 })
  })

  it('crosses midnight with the night shift', () => {
    const log = logAt(planWith(perShift))
    const afterMidnight = Date.parse('2026-01-13T00:30:00Z')
    expect(shown(log, afterMidnight)).toMatchObject({ due: '22:30', status: 'late' })
    log.reading('neg-1-fix-ph', 4.5, afterMidnight)
    expect(dueAt(log, Date.parse('2026-01-13T05:59:00Z'))).toBeUndefined()
  })

  it('in a night of the changing clock is due by the clock on the wall at the shift’s start', () => {
    // In summer time (UTC+1) the night shift of 28 March begins at 22:00 UTC and ends at 05:00 UTC; that of 24 October begins at 21:00 UTC.
    const spring = logAt(planWith(perShift), Date.parse('2026-03-28T12:00:00Z'))
    expect(dueAt(spring, Date.parse('2026-03-28T23:00:00Z'))?.dueAt).toBe(Date.parse('2026-03-28T22:30:00Z'))
    expect(dueAt(spring, Date.parse('2026-03-29T05:00:00Z'))?.dueAt).toBe(Date.parse('2026-03-29T05:30:00Z'))
    const autumn = logAt(planWith(perShift), Date.parse('2026-10-24T12:00:00Z'))
    expect(dueAt(autumn, Date.parse('2026-10-24T23:00:00Z'))?.dueAt).toBe(Date.parse('2026-10-24T21:30:00Z'))
    expect(dueAt(autumn, Date.parse('2026-10-25T06:10:00Z'))?.dueAt).toBe(Date.parse('2026-10-25T06:30:00Z'))
  })
})

describe('a check of once a state', () => {
  const once: Schedule = { kind: 'state', graceMinutes: 10 }

  it('is due when the machine comes into the state, and again the next time', () => {
    const log = new LabLog(planWith(once, ['startUp']), winter)
    log.run('neg-1', 'startUp', winter)
    expect(shown(log, winter + 5 * minute)).toEqual({ due: '06:00', status: 'due', missed: 0 })
    expect(shown(log, winter + 11 * minute)).toMatchObject({ status: 'late' })
    log.reading('neg-1-fix-ph', 4.5, winter + 12 * minute)
    expect(dueAt(log, winter + 13 * minute)).toBeUndefined()
    log.run('neg-1', 'running', winter + 20 * minute, 30.48)
    expect(dueAt(log, winter + 21 * minute)).toBeUndefined()
    log.run('neg-1', 'startUp', winter + 5 * hour)
    expect(shown(log, winter + 5 * hour)).toEqual({ due: '11:00', status: 'due', missed: 0 })
  })
})

describe('what is due at a machine', () => {
  it('comes in the order of the film’s path', () => {
    const plan = demoLab()
    const log = new LabLog(plan, winter)
    log.run('neg-1', 'running', winter, 30.48)
    const order = plan.machines[0]!.stations.map(({ id }) => id)
    const places = dueChecks(log.lab().state, plan, winter)
      .filter(({ machine }) => machine.id === 'neg-1')
      .map(({ check }) => order.indexOf(check.station))
    expect(places.length).toBeGreaterThan(20)
    expect([...places].sort((a, b) => a - b)).toEqual(places)
  })
})
