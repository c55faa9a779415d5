import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { shiftAt, shiftOn } from '../../src/plan/shift-time.ts'
import { shiftsOver } from '../../src/projections/coverage.ts'

const plan = demoLab()
const hour = 3_600_000
const at = (text: string) => {
  const { shift, date, from, to } = shiftAt(plan, Date.parse(text))
  return `${shift.id} ${date} ${(to - from) / hour} h`
}

// Europe/Lisbon is UTC in winter and UTC+1 in summer; the clocks change at 01:00 UTC on 29 March and 25 October 2026 (EU Directive 2000/84/EC).
describe('the shift of an instant', () => {
  it.each([
    ['2026-01-12T06:00:00Z', 'early 2026-01-12 8 h'],
    ['2026-01-12T13:59:59.999Z', 'early 2026-01-12 8 h'],
    ['2026-01-12T14:00:00Z', 'late 2026-01-12 8 h'],
    ['2026-01-12T23:59:00Z', 'night 2026-01-12 8 h'],
    ['2026-01-13T05:59:59Z', 'night 2026-01-12 8 h'],
    ['2026-07-01T05:30:00Z', 'early 2026-07-01 8 h'],
  ])('%s is of %s', (text, expected) => expect(at(text)).toBe(expected))

  it('in the night of the spring change is an hour shorter, of the autumn change an hour longer', () => {
    expect(at('2026-03-29T00:30:00Z')).toBe('night 2026-03-28 7 h')
    expect(at('2026-10-25T01:30:00Z')).toBe('night 2026-10-24 9 h')
    expect(at('2026-10-25T00:30:00Z')).toBe('night 2026-10-24 9 h')
  })

  it('shifts follow one another without gap or overlap over a year of changing clocks', () => {
    const from = Date.parse('2026-01-01T06:00:00Z')
    const shifts = shiftsOver(plan, { from, to: from + 366 * 24 * hour })
    shifts.slice(1).forEach((shift, index) => expect(shift.from).toBe(shifts[index]!.to))
    expect(shifts.filter(({ from, to }) => to - from !== 8 * hour)).toHaveLength(2)
  })

  it('where shifts leave a gap, the one before goes on until the next begins', () => {
    const dayOnly = { ...plan, shifts: [plan.shifts[0]!] }
    const found = shiftAt(dayOnly, Date.parse('2026-01-12T20:00:00Z'))
    expect(found).toMatchObject({ date: '2026-01-12', to: Date.parse('2026-01-13T06:00:00Z') })
  })

  it('of a date is found again from its shift and date', () => {
    for (const text of ['2026-01-12T07:00:00Z', '2026-03-29T00:30:00Z', '2026-10-25T01:30:00Z']) {
      const { shift, date, from, to } = shiftAt(plan, Date.parse(text))
      expect(shiftOn(plan, shift, date)).toEqual({ shift, date, from, to })
    }
  })
})
