import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { shiftAfter, shiftBefore, shiftNamed, shiftPath } from '../../src/ui/shift/shift-place.ts'
import { LabLog } from '../projections/log.ts'

const early = demoLab()
const at = (text: string): number => Date.parse(text)
/** From Wednesday noon on the laboratory works two shifts of twelve hours, under names of their own. */
const twelve: LabPlan = { ...early, shifts: [{ id: 'day' as never, name: 'Day', from: '06:00', to: '18:00' }, { id: 'dark' as never, name: 'Dark', from: '18:00', to: '06:00' }] }
const revised = at('2026-01-14T12:00:00Z')
const log = new LabLog(early, at('2026-01-12T00:00:00Z'))
log.say({ kind: 'plan', data: { plan: twelve, effectiveFrom: revised }, at: revised, person: 'helena' })
const lab = log.lab()
const hours = ({ shift, date, from, to }: ReturnType<typeof shiftAt>): string => `${shift.id} ${date} ${(to - from) / 3_600_000} h`

describe('from shift to shift across a revision of their hours', () => {
  it('each is by the plan that was in force there', () => {
    const now = shiftAt(twelve, at('2026-01-14T20:00:00Z'))
    expect(hours(now)).toBe('dark 2026-01-14 12 h')
    const before = shiftBefore(lab, twelve, now)
    expect(hours(before)).toBe('day 2026-01-14 12 h')
    // Before the day of the revision the shifts had eight hours.
    const old = shiftBefore(lab, twelve, before)
    expect(hours(old)).toBe('night 2026-01-13 8 h')
    expect(hours(shiftBefore(lab, twelve, old))).toBe('late 2026-01-13 8 h')
    expect(hours(shiftAfter(lab, twelve, shiftBefore(lab, twelve, old)))).toBe('night 2026-01-13 8 h')
    expect(hours(shiftAfter(lab, twelve, now))).toBe('day 2026-01-15 12 h')
  })

  it('an address opens the shift that it was printed for, under its old hours', () => {
    for (const [plan, time] of [[early, '2026-01-13T15:00:00Z'], [early, '2026-01-13T23:00:00Z'], [twelve, '2026-01-15T08:00:00Z']] as const) {
      const span = shiftAt(plan, at(time))
      const found = shiftNamed(lab, twelve, shiftPath(span).split('/').slice(2), at('2026-01-16T08:00:00Z'))
      expect(found).toEqual(span)
    }
  })

  it('an address that names no shift or no day opens none', () => {
    for (const place of [['2026-01-15', 'never'], ['2026-02-31', 'day'], ['yesterday', 'day']]) expect(shiftNamed(lab, twelve, place, at('2026-01-16T08:00:00Z'))).toBeUndefined()
  })
})
