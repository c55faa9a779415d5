import { describe, expect, it } from 'vitest'
import { toMark } from '../../src/corrections/remedies/to-mark.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import { Bench } from './kit.ts'

const topUp = 'level:replenisher'
const bathOf = (plan: Bench['plan']) => plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-dev')!.bath!
const low = (bench: Bench): ReturnType<Bench['read']> => {
  bench.read('neg-1-dev-sg', 1.065)
  return bench.confirmed('neg-1-dev-level', -15)
}

describe('a level that is low, with the strength as it should be', () => {
  it('says the litres of replenisher behind its caution where the plan knows the surface of the tank', () => {
    const bench = new Bench()
    const remedy = bench.remedy(low(bench), topUp)
    expect(bench.reveal(remedy)).toMatchObject({ ok: false, needs: [{ card: 'developer-replenisher' }] })
    const { amount, unit, working } = bench.opened(remedy)
    expect({ amount, unit, by: working!.calculation }).toEqual({ amount: expect.closeTo(12_000, 6), unit: 'mL', by: 'bath.topUp' })
  })

  it('says to fill to the mark where it does not, with the same caution', () => {
    const bench = new Bench((plan) => {
      delete bathOf(plan).surfaceSquareMetres
    })
    const remedy = bench.remedy(low(bench), 'level')
    expect(remedy).toMatchObject({ lacks: { code: 'levelAreaNotInPlan', facts: { unit: 'mm' } } })
    expect(remedy.dose).toBeUndefined()
    expect(remedy.how.map(({ facts }) => facts['card'])).toContain('developer-replenisher')
  })

  it('is read again before more goes in, and counts against the headroom', () => {
    const bench = new Bench()
    const exception = low(bench)
    bench.pour(bench.remedy(exception, topUp), { mix: false })
    expect(bench.remedy(exception, topUp).refused?.code).toBe('stillMixing')
    bench.wait(30)
    expect(bench.remedy(exception, topUp).refused?.code).toBe('readAgainFirst')
    bench.read('neg-1-dev-level', 0)
    expect(bench.state.exceptions.all[exception]!.state).toBe('closed')
  })

  it('is never topped up beyond the headroom at once', () => {
    const bench = new Bench((plan) => {
      bathOf(plan).headroomLitres = 8
    })
    const remedy = bench.remedy(low(bench), topUp)
    expect(remedy.dose).toMatchObject({ cappedBy: 'headroom', staged: true })
    expect(bench.opened(remedy).amount).toBe(8000)
  })

  it('blocks the signature where its caution was not confirmed, and does not where it was', () => {
    const blocked = (isConfirmed: boolean) => {
      const bench = new Bench()
      const exception = low(bench)
      const remedy = bench.remedy(exception, topUp)
      bench.confirmCautions(remedy)
      const caution = bench.cautions[0]!.id
      bench.enter('add', { station: 'neg-1-dev' as never, material: 'replenisher' as never, portion: 1, poured: { amount: 12, unit: 'L', keyed: '12' }, mixSeconds: 60, exception, ...(isConfirmed ? { caution } : {}) })
      return shiftPage({ lab: bench.lab, plan: bench.plan, span: shiftAt(bench.plan, bench.now), now: bench.now }).blockers.map(({ code }) => code)
    }
    expect(blocked(false)).toContain('addWithoutCaution')
    expect(blocked(true)).not.toContain('addWithoutCaution')
  })
})

describe('litres to the mark', () => {
  const check = (unit: string, aim: number) => ({ unit, limits: { aim } }) as Parameters<typeof toMark>[0]
  const bath = { litres: 1000, headroomLitres: 40, circulationLitresPerMinute: 150, surfaceSquareMetres: 0.8, constituents: [] }
  it.each([
    ['mm', 0, -15, 12], ['cm', 0, -1.5, 12], ['mm', 850, 835, 12], ['%', 100, 97, 30], ['L', 1000, 960, 40],
  ])('read in %s, %d wanted and %d found: %d L', (unit, aim, found, litres) => {
    expect(toMark(check(unit, aim), bath, found)!.result.addLitres).toBeCloseTo(litres, 9)
  })

  it('are unknown in a unit that says nothing of volume, and none above the mark', () => {
    expect(toMark(check('marks', 10), bath, 8)).toBeUndefined()
    expect(toMark(check('mm', 0), bath, 5)).toBeUndefined()
  })
})
