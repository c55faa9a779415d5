import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { ReadingCheck } from '../../src/plan/check.ts'
import { secondLook } from '../../src/rounds/second-look.ts'
import { skipReasons, needsRemark } from '../../src/rounds/skip-reasons.ts'
import { LabLog, minute, smallPlan } from '../projections/log.ts'

const demo = demoLab()
const plan = smallPlan(demo, 'neg-1-fix-ph')
const ph = plan.checks[0] as ReadingCheck
const start = Date.parse('2026-01-12T06:00:00Z')

const look = (recent: number[], value: number) => {
  const log = new LabLog(plan, start)
  recent.forEach((each, index) => log.reading('neg-1-fix-ph', each, start + (index + 1) * 240 * minute))
  return secondLook(ph, log.lab().state.checks[ph.id], value)
}

describe('a second look', () => {
  it('is asked for where a value is far from the recent ones: 4.92 after 4.58', () => {
    expect(look([4.55, 4.56, 4.57, 4.58, 4.58], 4.92)).toEqual({ usual: 4.57 })
  })

  it('is not asked for a value in line with them, nor where there are fewer than five', () => {
    expect(look([4.55, 4.56, 4.57, 4.58, 4.58], 4.6)).toBeUndefined()
    expect(look([4.55, 4.56, 4.57, 4.58], 4.92)).toBeUndefined()
    expect(secondLook(ph, undefined, 4.92)).toBeUndefined()
  })

  it('names the figure with its point in place where the point has slipped', () => {
    expect(look([4.55, 4.56, 4.57, 4.58, 4.58], 0.46)).toEqual({ usual: 4.57, slip: 4.6 })
  })

  it('is not asked for by a bath that has been drifting: its own spread is wide', () => {
    expect(look([4.3, 4.4, 4.5, 4.6, 4.7, 4.8], 4.9)).toBeUndefined()
  })
})

describe('reasons for leaving a check out', () => {
  const reasons = (id: string, state: 'running' | 'stopped' = 'running') => skipReasons(demo, demo.checks.find((check) => check.id === id)!, state)

  it('are those that can be true here: no sample is lost at a gauge, nothing is stopped that runs', () => {
    expect(reasons('neg-1-dev-flow')).toEqual(['darkWork', 'instrumentFault', 'noAccess', 'otherWork', 'noStaff', 'other'])
    expect(reasons('pos-2-dev-bromide')).toContain('sampleLost')
    expect(reasons('pos-2-dev-bromide')).not.toContain('darkWork')
    expect(reasons('neg-1-scratches')).not.toContain('instrumentFault')
    expect(reasons('eyewash', 'stopped')).toContain('machineStopped')
  })

  it('always leave room for words of one’s own', () => {
    for (const { id } of demo.checks) expect(reasons(id).at(-1)).toBe('other')
    expect(needsRemark('other')).toBe(true)
    expect(needsRemark('noAccess')).toBe(false)
  })
})
