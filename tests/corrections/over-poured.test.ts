import { describe, expect, it } from 'vitest'
import { addOf, type AddMade } from '../../src/corrections/add-entry.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { phaseAt } from '../../src/projections/exceptions.ts'
import { isOverPoured } from '../../src/projections/over-poured.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import { Bench } from './kit.ts'

const acid = 'acid:acetic-acid-28'
const check = 'neg-1-fix-ph'

/** A high pH, its acid worked out, and so many times of it poured. */
const pouring = (times: number, why = 'the jug slipped', change?: ConstructorParameters<typeof Bench>[0]) => {
  const bench = new Bench(change).safe()
  const exception = bench.confirmed(check, 4.85)
  const remedy = bench.remedy(exception, acid)
  const { amount } = bench.opened(remedy)
  const made = addOf(remedy, { cautions: bench.cautions, person: bench.person, now: bench.now, poured: { amount: amount * times, unit: 'mL', keyed: 'jug' }, overruled: why })
  return { bench, exception, remedy, made }
}
const data = (made: AddMade) => {
  if (!made.ok) throw new Error('nothing was kept')
  return made.data
}
const now = ({ state }: Bench, exception: ReturnType<Bench['read']>) => state.exceptions.all[exception]!

describe('more poured than was worked out', () => {
  it('is always kept as it was, with its reason', () => {
    expect(pouring(30).made).toMatchObject({ ok: true, data: { overruled: 'the jug slipped', rechecks: 2 } })
    expect(pouring(1.5, '').made).toMatchObject({ ok: false, problems: [{ code: 'sayWhy' }] })
  })

  it('names what it went beyond: the safe single dose and the room in the tank, and neither where it stayed within', () => {
    const narrow = (litres: number) => (plan: Bench['plan']) => {
      plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-fix')!.bath!.headroomLitres = litres
    }
    expect(data(pouring(30).made).beyond).toEqual(['aboveSafeSingleDose', 'noHeadroom'])
    expect(data(pouring(1.5, 'slip', narrow(3)).made).beyond).toEqual(['noHeadroom'])
    expect(data(pouring(1.2).made).beyond).toBeUndefined()
    expect(data(pouring(0.5).made)).not.toHaveProperty('rechecks')
  })

  it('leaves the exception open until the mixed bath was read twice', () => {
    const { bench, exception, made } = pouring(1.8)
    bench.enter('add', data(made))
    bench.wait(data(made).mixSeconds / 60 + 1).read(check, 4.5)
    expect(phaseAt(now(bench, exception), bench.now)).toBe('toRecheck')
    bench.wait(2).read(check, 4.5)
    expect(now(bench, exception).state).toBe('closed')
  })

  it('opens an exception again that had closed before anybody knew', () => {
    const { bench, exception, made } = pouring(1.8)
    bench.read(check, 4.5)
    expect(now(bench, exception).state).toBe('closed')
    bench.enter('add', data(made))
    expect(now(bench, exception)).toMatchObject({ state: 'open', doses: [{ isOver: true }] })
  })

  it('of acid has the sulfite found anew before more acid; a dose as worked out has not', () => {
    const after = (times: number) => {
      const { bench, exception, made } = pouring(times)
      bench.enter('add', data(made))
      bench.wait(data(made).mixSeconds / 60 + 1).read(check, 4.9)
      bench.wait(2).read(check, 4.9)
      bench.read('neg-1-fix-level', 0)
      const refused = () => bench.remedy(exception, acid, { resets: [{ station: 'neg-1-fix' as never, at: bench.now, why: 'apart from what it answered' }] }).refused?.code
      return { bench, refused }
    }
    const more = after(1.8)
    expect(more.refused()).toBe('sulfiteTooOld')
    more.bench.read('neg-1-fix-sulfite', 12)
    expect(more.refused()).toBeUndefined()
    expect(after(1).refused()).toBeUndefined()
  })

  it('is an incident of the shift until a supervisor has taken note of it', () => {
    const { bench, made } = pouring(1.8)
    const add = bench.enter('add', data(made))
    const page = () =>
      shiftPage({ lab: bench.lab, plan: bench.plan, span: shiftAt(bench.plan, bench.now), now: bench.now })
    expect(page().incidents).toMatchObject([{ line: { id: add } }])
    expect(page().blockers).toContainEqual({ code: 'incidentNotSeen', ref: add })
    bench.wait(1).enter('acknowledge', { of: add, remark: 'read twice, in limits' }, bench.plan.people.find(({ role }) => role === 'operator')!.id)
    expect(page().incidents[0]!.seen).toBeUndefined()
    bench.wait(1).enter('acknowledge', { of: add, remark: 'read twice, in limits' }, bench.plan.people.find(({ role }) => role === 'supervisor')!.id)
    expect(page().blockers).not.toContainEqual({ code: 'incidentNotSeen', ref: add })
  })

  it('begins beyond what a jug is read to', () => {
    const planned = { amount: 2, unit: 'L' as const }
    expect(isOverPoured({ planned, poured: { amount: 2100, unit: 'mL', keyed: '2100' } })).toBe(false)
    expect(isOverPoured({ planned, poured: { amount: 2101, unit: 'mL', keyed: '2101' } })).toBe(true)
    expect(isOverPoured({ poured: { amount: 9, unit: 'L', keyed: '9' } })).toBe(false)
  })
})

describe('poured alone, where the plan asks for two', () => {
  const alone = (asked: { pouredAlone?: boolean; overruled?: string }) => {
    const bench = new Bench()
    bench.read('neg-1-dev-hydroquinone', 1.3)
    const remedy = bench.remedy(bench.confirmed('neg-1-dev-metol', 1.2), 'constituent:hydroquinone')
    const { amount } = bench.opened(remedy)
    return { bench, made: addOf(remedy, { cautions: bench.cautions, person: bench.person, now: bench.now, poured: { amount, unit: 'g', keyed: '200' }, ...asked }) }
  }

  it('is asked for somebody first, and kept with its reason where nobody was there', () => {
    expect(alone({}).made).toMatchObject({ ok: false, problems: [{ code: 'secondPersonNeeded' }] })
    expect(alone({ pouredAlone: true }).made).toMatchObject({ ok: false, problems: [{ code: 'sayWhy' }] })
    expect(alone({ pouredAlone: true, overruled: 'the other shift had gone' }).made).toMatchObject({ ok: true, data: { overruled: 'the other shift had gone' } })
  })

  it('stands at sign-off', () => {
    const { bench, made } = alone({ pouredAlone: true, overruled: 'the other shift had gone' })
    const ref = bench.enter('add', data(made))
    expect(shiftPage({ lab: bench.lab, plan: bench.plan, span: shiftAt(bench.plan, bench.now), now: bench.now }).blockers).toContainEqual({ code: 'addWithoutSecondPerson', ref })
  })
})
