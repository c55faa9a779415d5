import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { factorFrom, responseOf } from '../../src/corrections/response.ts'
import { phaseAt } from '../../src/projections/exceptions.ts'
import type { Known } from '../../src/corrections/situation.ts'
import type { MaterialId, PersonId, StationId } from '../../src/plan/ids.ts'
import { Bench } from './kit.ts'

const acid = 'acid:acetic-acid-28'
const station = 'neg-1-fix' as StationId
const material = 'acetic-acid-28' as MaterialId
const day = 24 * 3_600_000
const factor = (bench: Bench, lot?: string) => responseOf(bench.state, bench.plan, { station, material, lot, now: bench.now }).factor

/** One dose whose answer is a given share of what the model said; the bath is then brought right by hand, and everything is read anew. */
const answered = (bench: Bench, ratio: number, { lot = 'A1', start = 4.92 } = {}) => {
  bench.safe()
  const exception = bench.confirmed('neg-1-fix-ph', start)
  const remedy = bench.remedy(exception, acid, { lots: { [material]: lot } })
  const { model } = bench.pour(remedy, { lot })
  const { from, to, toTwice } = model!
  const found = ratio <= 1 ? from + (to - from) * ratio : to + (toTwice! - to) * (ratio - 1)
  bench.read('neg-1-fix-ph', Number(found.toFixed(3)))
  return exception
}
const closed = (bench: Bench, exception: ReturnType<Bench['read']>) => {
  bench.enter('close', { exception, reason: 'other' })
  return bench
}

describe('the response of a bath', () => {
  it('is 1 before anything was learned', () => {
    expect(factor(new Bench())).toBe(1)
  })

  it('moves half way to a first answer, further with a second, and is what divides the next amount', () => {
    const other = new Bench()
    closed(other, answered(other, 1.3))
    expect(factor(other)).toBeCloseTo(Math.sqrt(1.3), 2)
    other.wait(60)
    const exception = other.safe().confirmed('neg-1-fix-ph', 4.92)
    const { wholeAmount } = other.opened(other.remedy(exception, acid))
    // The same bath, as if nothing had been learned of it.
    const plain = other.opened(other.remedy(exception, acid, { resets: [{ station, at: other.now, why: 'for comparison' }] })).wholeAmount!
    expect(wholeAmount! / plain).toBeCloseTo(1 / factor(other), 3)
    closed(other, exception)
    other.wait(60)
    closed(other, answered(other, 1.3))
    expect(factor(other)).toBeGreaterThan(Math.sqrt(1.3))
    expect(factor(other)).toBeLessThan(1.3)
  })

  it('goes back to 1 with time', () => {
    const bench = new Bench()
    closed(bench, answered(bench, 1.3))
    const fresh = factor(bench)
    bench.now += 14 * day
    const later = factor(bench)
    expect(later).toBeGreaterThan(1)
    expect(later).toBeLessThan(fresh)
    bench.now += 60 * day
    expect(factor(bench)).toBeCloseTo(1, 1)
  })

  it('starts anew with a new lot, and with the old one takes up again what it knew', () => {
    const bench = new Bench()
    closed(bench, answered(bench, 1.3))
    expect(factor(bench, 'B2')).toBe(1)
    expect(factor(bench, 'A1')).toBeGreaterThan(1.1)
  })

  it('starts anew with another strength of the same material', () => {
    const bench = new Bench()
    closed(bench, answered(bench, 1.3))
    const plan = structuredClone(bench.plan)
    plan.materials.find(({ id }) => id === material)!.strength = { kind: 'percent', percentByMass: 20, gramsPerMillilitre: 1.026 }
    bench.wait(1).enter('plan', { plan, effectiveFrom: bench.now })
    expect(responseOf(bench.state, plan, { station, material, lot: 'A1', now: bench.now }).factor).toBe(1)
  })

  it('starts anew with a new bath', () => {
    const bench = new Bench()
    const exception = answered(bench, 0.8)
    expect(factor(bench, 'A1')).toBeLessThan(1)
    bench.enter('close', { exception, reason: 'bathReplaced' })
    expect(factor(bench, 'A1')).toBe(1)
  })

  it('can be reset with a reason', () => {
    const bench = new Bench()
    closed(bench, answered(bench, 1.3))
    const resets = [{ station, at: bench.now, why: 'jug was marked wrong' }]
    expect(responseOf(bench.state, bench.plan, { station, material, lot: 'A1', now: bench.now, resets }).factor).toBe(1)
  })

  it('is not moved by an answer outside the bounds, which stops the flow until drum, volume and analysis were looked at', () => {
    const bench = new Bench()
    const exception = answered(bench, 0.45)
    expect(factor(bench)).toBe(1)
    const stopped = bench.remedy(exception, acid)
    expect(stopped.refused).toMatchObject({ code: 'answerOutOfBounds', facts: { ratio: 0.45, lot: 'A1' }, doFirst: { code: 'checkDrumVolumeAnalysis' } })
    const reset: Known = { resets: [{ station, material, at: bench.now, why: 'drum relabelled' }] }
    expect(bench.remedy(exception, acid, reset).refused).toBeUndefined()
    expect(bench.remedy(exception, acid, { lots: { [material]: 'B2' } }).refused).toBeUndefined()
  })

  it('stops the flow in the next exception too, where the answer was too strong and closed the first by itself', () => {
    const bench = new Bench()
    answered(bench, 1.9)
    bench.wait(60)
    const exception = bench.safe().confirmed('neg-1-fix-ph', 4.92)
    expect(bench.remedy(exception, acid).refused?.code).toBe('answerOutOfBounds')
    expect(factor(bench)).toBe(1)
  })

  it('goes on once the fault is named: the meter, or the volume set right in the plan', () => {
    const stopped = () => {
      const bench = new Bench()
      const exception = answered(bench, 0.45)
      expect(bench.remedy(exception, acid).refused?.code).toBe('answerOutOfBounds')
      return { bench, exception }
    }
    const meter = stopped()
    meter.bench.enter('close', { exception: meter.exception, reason: 'instrumentFault' })
    meter.bench.wait(5)
    expect(meter.bench.remedy(meter.bench.safe().confirmed('neg-1-fix-ph', 4.9), acid).refused).toBeUndefined()

    const volume = stopped()
    volume.bench.plan.machines[0]!.stations.find(({ id }) => id === station)!.bath!.litres = 1400
    volume.bench.wait(1).enter('plan', { plan: structuredClone(volume.bench.plan), effectiveFrom: volume.bench.now })
    expect(volume.bench.remedy(volume.exception, acid).refused).toBeUndefined()
  })

  it('is not moved by a change that the meter can hardly show', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === material)!.safeSingleDosePerLitre = 0.3
    })
    const exception = answered(bench, 0.2)
    const { history, factor: found } = responseOf(bench.state, bench.plan, { station, material, now: bench.now })
    expect(history.map(({ kind }) => kind)).toEqual(['tooSmall'])
    expect(found).toBe(1)
    expect(bench.remedy(exception, acid).refused?.code).toBe('readAgainFirst')
    bench.wait(2).read('neg-1-fix-ph', 4.91)
    expect(bench.remedy(exception, acid).refused).toBeUndefined()
  })

  it('adds up doses too small to tell, from one exception to the next, until a wrong lot can be told', () => {
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === material)!.safeSingleDosePerLitre = 1
    })
    const kinds = () => responseOf(bench.state, bench.plan, { station, material, now: bench.now }).history.map(({ kind }) => kind)
    for (const expected of [['tooSmall'], ['tooSmall', 'tooSmall'], ['tooSmall', 'tooSmall', 'outOfBounds']]) {
      closed(bench, answered(bench, 1.9))
      bench.wait(60).read('neg-1-fix-level', 0)
      expect(kinds()).toEqual(expected)
    }
    expect(bench.remedy(bench.safe().confirmed('neg-1-fix-ph', 4.92), acid).refused).toMatchObject({ code: 'answerOutOfBounds' })
  })

  it('judges the portions of one exception together: the reading between them cancels', () => {
    const bench = new Bench()
    const exception = answered(bench, 1.15, { start: 5.2 })
    bench.safe().read('neg-1-fix-level', 0)
    const { model } = bench.pour(bench.remedy(exception, acid, { lots: { [material]: 'A1' } }), { lot: 'A1' })
    bench.read('neg-1-fix-ph', Number((model!.from + (model!.to - model!.from) * 0.9).toFixed(3)))
    const { history, learnedFrom } = responseOf(bench.state, bench.plan, { station, material, lot: 'A1', now: bench.now })
    expect(history.map(({ kind }) => kind)).toEqual(['learned', 'learned'])
    expect(history[1]!.ratio).toBeGreaterThan(0.95)
    expect(history[1]!.ratio).toBeLessThan(1.1)
    expect(learnedFrom).toBe(1)
  })

  it('counts the acid that was poured as part of the bath when the next portion is worked out', () => {
    const bench = new Bench()
    const exception = answered(bench, 0.9, { start: 5.2 })
    bench.safe().read('neg-1-fix-level', 0)
    const { working } = bench.opened(bench.remedy(exception, acid, { lots: { [material]: 'A1' } }))
    const acetic = (working!.inputs.bath as { substance: string; gramsPerLitre: number }[]).find(({ substance }) => substance === 'aceticAcid')!
    const { poured } = bench.state.exceptions.all[exception]!.doses[0]!
    // 28 % by mass at 1.0361 g/mL, into 640 L that hold 13.9 g/L already.
    expect(acetic.gramsPerLitre).toBeCloseTo(13.9 + (poured.amount * 0.28 * 1.0361) / 640, 2)
  })

  it('is not moved where something else was poured between the two readings', () => {
    const bench = new Bench().safe()
    const exception = bench.confirmed('neg-1-fix-ph', 4.92)
    const low = bench.confirmed('neg-1-fix-silver', 3)
    bench.pour(bench.remedy(exception, acid), { mix: false })
    bench.enter('add', { station, material: 'water', exception: low, portion: 1, poured: { amount: 10, unit: 'L', keyed: '10' }, mixSeconds: 60 })
    bench.wait(30).read('neg-1-fix-ph', 4.75)
    expect(responseOf(bench.state, bench.plan, { station, material, now: bench.now }).history.map(({ kind }) => kind)).toEqual(['mixedDoses'])
  })

  it('stays within its bounds and on the side of what was answered', () => {
    const answers = fc.array(fc.record({ ratio: fc.double({ min: 0.7, max: 1.4, noNaN: true }), readAt: fc.integer({ min: 0, max: 90 * day }) }), { maxLength: 12 })
    fc.assert(
      fc.property(answers, (learned) => {
        const found = factorFrom(learned, 90 * day)
        expect(found).toBeGreaterThanOrEqual(0.7)
        expect(found).toBeLessThanOrEqual(1.4)
        const ratios = learned.map(({ ratio }) => ratio)
        expect(found).toBeGreaterThanOrEqual(Math.min(1, ...ratios) - 1e-12)
        expect(found).toBeLessThanOrEqual(Math.max(1, ...ratios) + 1e-12)
      }),
    )
  })

  it('is not carried away by a single answer among many', () => {
    const many = [1.02, 0.99, 1.01, 1, 0.98].map((ratio) => ({ ratio, readAt: 0 }))
    expect(Math.abs(factorFrom([...many, { ratio: 1.4, readAt: 0 }], 0) - factorFrom(many, 0))).toBeLessThan(0.02)
  })
})

describe('a change that is small for the meter', () => {
  const boric = 'mildAcid:boric-acid'
  const check = 'neg-1-dev-ph'
  const poured = (bench: Bench, lot: string) => {
    bench.read('neg-1-dev-temp', 21)
    bench.read('neg-1-dev-level', 0)
    const exception = bench.confirmed(check, 8.7)
    const remedy = bench.remedy(exception, boric, { lots: { 'boric-acid': lot } })
    bench.pour(remedy, { lot })
    return { exception, remedy, state: () => bench.state.exceptions.all[exception]!.state }
  }

  it('by a lot that is new to the bath is read twice before the exception closes', () => {
    const bench = new Bench()
    const { exception, remedy, state } = poured(bench, 'A1')
    expect(remedy.dose!.rechecks).toBe(2)
    bench.read(check, 8.62)
    expect(state()).toBe('open')
    expect(phaseAt(bench.state.exceptions.all[exception]!, bench.now)).toBe('toRecheck')
    bench.wait(2).read(check, 8.62)
    expect(state()).toBe('closed')
  })

  it('is read twice before the next portion too', () => {
    const bench = new Bench()
    const { exception } = poured(bench, 'A1')
    bench.read(check, 8.66)
    expect(bench.remedy(exception, boric).refused).toMatchObject({ code: 'readAgainFirst', facts: { phase: 'toRecheck' } })
    bench.wait(2).read(check, 8.66)
    expect(bench.remedy(exception, boric).refused).toBeUndefined()
  })

  it('is read once where the bath has answered the lot before, and twice again for another', () => {
    const bench = new Bench()
    for (let time = 0; time < 3; time++) {
      const { remedy } = poured(bench, 'A1')
      const { model } = bench.opened(remedy)
      for (let again = 0; again < remedy.dose!.rechecks; again++) bench.wait(2).read(check, Number(model!.to.toFixed(2)))
      closed(bench, bench.state.exceptions.open[check as never] ?? remedy.exception!)
      bench.wait(60)
    }
    expect(poured(bench, 'A1').remedy.dose!.rechecks).toBe(1)
    bench.read(check, 8.6)
    bench.wait(60)
    expect(poured(bench, 'B2').remedy.dose!.rechecks).toBe(2)
  })

  it('large enough for one reading is read once', () => {
    const bench = new Bench().safe()
    expect(bench.remedy(bench.confirmed('neg-1-fix-ph', 5.1), acid).dose!.rechecks).toBe(1)
  })

  it('is judged on the mean of the readings before and after', () => {
    const bench = new Bench()
    const { exception } = poured(bench, 'A1')
    bench.read(check, 8.66)
    bench.wait(2).read(check, 8.64)
    const { history } = responseOf(bench.state, bench.plan, { station: 'neg-1-dev' as StationId, material: 'boric-acid' as MaterialId, now: bench.now })
    expect(history).toMatchObject([{ exception, readings: { before: 2, after: 2 } }])
    expect(history[0]!.observedChange).toBeCloseTo(-0.05, 9)
  })
})

describe('acid that this bath answers weakly', () => {
  const weak = () => {
    // Neither the plan's safe single dose nor the headroom is to cut an amount here.
    const bench = new Bench((plan) => {
      plan.materials.find(({ id }) => id === material)!.safeSingleDosePerLitre = 100
    })
    closed(bench, answered(bench, 0.8))
    bench.wait(60).read('neg-1-fix-level', 0)
    const exception = bench.safe().confirmed('neg-1-fix-ph', 4.84)
    return { bench, remedy: bench.remedy(exception, acid) }
  }
  const second = (bench: Bench): PersonId => bench.plan.people[1]!.id

  it('is not scaled above the computed amount by one person alone', () => {
    const { bench, remedy } = weak()
    expect(remedy.dose!.response.factor).toBeLessThan(1)
    expect(remedy.dose!.secondPerson.offersScaledUp).toBe(true)
    const alone = bench.opened(remedy)
    expect(alone.scaledUp).toBe(false)
    expect(alone.working!.inputs.responseFactor).toBe(1)
  })

  it('is scaled with a second person, who is not the first', () => {
    const { bench, remedy } = weak()
    const alone = bench.opened(remedy)
    const two = bench.opened(remedy, second(bench))
    expect(two).toMatchObject({ scaledUp: true, secondPerson: second(bench) })
    expect(two.amount / alone.amount).toBeCloseTo(1 / remedy.dose!.response.factor, 6)
    expect(bench.reveal(remedy, bench.person)).toMatchObject({ scaledUp: false, amount: alone.amount })
  })

  it('is scaled down without any second person', () => {
    const bench = new Bench()
    closed(bench, answered(bench, 1.3))
    bench.wait(60)
    const remedy = bench.remedy(bench.safe().confirmed('neg-1-fix-ph', 4.92), acid)
    expect(bench.opened(remedy).working!.inputs.responseFactor).toBeCloseTo(factor(bench), 9)
  })
})
