import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, StationId } from '../../src/plan/ids.ts'
import { Lab } from '../../src/projections/lab.ts'
import { isLabelOf, labelLeads } from '../../src/rounds/label-leads.ts'
import { standsAt } from '../../src/rounds/presence.ts'
import { startRound } from '../../src/rounds/round.ts'
import { walkAt } from '../../src/rounds/walk.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { arrivedFrom } from '../../src/demo/draft.ts'
import type { DeviceId, EntryId } from '../../src/record/ids.ts'

const plan = demoLab()
const now = Date.parse('2026-01-14T10:00:00Z')
const planEntry = '01900000-0000-7000-8000-000000000001' as EntryId
const lab = new Lab()
const drafts = demoHistory({ seed: 3, plan, planEntry, until: now, shifts: 1 })
lab.add(arrivedFrom([{ id: planEntry, kind: 'plan', data: { plan, effectiveFrom: 0 }, person: plan.people[0]!.id, time: drafts[0]!.time - 1 }, ...drafts], 'd'.repeat(16) as DeviceId))
const machine = plan.machines[0]!
const fixing = 'neg-1-fix' as StationId

describe('a scanned label', () => {
  it('leads to the step of the open round at that place', () => {
    const walk = walkAt(lab.state, plan, machine, now + 4 * 3_600_000)!
    const round = startRound(walk, 'r', now)
    const at = round.steps.findIndex(({ station }) => station === fixing)
    expect(at).toBeGreaterThan(0)
    expect(labelLeads({ station: fixing }, { plan, lab: lab.state, round, now })).toEqual({ to: 'step', at, station: fixing })
  })

  it('leads to its own check, whether it is due or not', () => {
    const check = 'neg-1-fix-ph' as CheckId
    expect(labelLeads({ check }, { plan, lab: lab.state, round: undefined, now })).toEqual({ to: 'check', check, station: fixing })
  })

  it('leads to the place where several checks are due, or none', () => {
    expect(labelLeads({ station: fixing }, { plan, lab: lab.state, round: undefined, now: now + 8 * 3_600_000 })).toEqual({ to: 'station', station: fixing })
  })

  it('of a place that the plan does not have leads nowhere', () => {
    expect(labelLeads({ station: 'old-tank' as StationId }, { plan, lab: lab.state, round: undefined, now })).toEqual({ to: 'nowhere' })
  })

  it('is that of a check by its own id or by its place', () => {
    const check = plan.checks.find(({ id }) => id === 'neg-1-fix-ph')!
    expect(isLabelOf({ station: fixing }, check)).toBe(true)
    expect(isLabelOf({ check: check.id }, check)).toBe(true)
    expect(isLabelOf({ station: 'neg-1-dev' as StationId }, check)).toBe(false)
  })

  it('stands for ten minutes, at its own place, and never before it was scanned', () => {
    const stood = { station: fixing, since: now }
    expect(standsAt(stood, fixing, now + 9 * 60_000)).toBe(true)
    expect(standsAt(stood, fixing, now + 11 * 60_000)).toBe(false)
    expect(standsAt(stood, fixing, now - 1)).toBe(false)
    expect(standsAt(stood, 'neg-1-dev' as StationId, now)).toBe(false)
  })
})
