import { describe, expect, it } from 'vitest'
import { Bench } from './kit.ts'

describe('acid for a fixing bath found at pH 4.92', () => {
  const high = () => {
    const bench = new Bench().safe()
    const exception = bench.confirmed('neg-1-fix-ph', 4.92)
    return { bench, exception }
  }

  it('is offered as half of what the acid–base engine computes, behind its caution', () => {
    const { bench, exception } = high()
    const acid = bench.remedy(exception, 'acid:acetic-acid-28')
    expect(acid.refused).toBeUndefined()
    expect(bench.reveal(acid)).toEqual({ ok: false, needs: acid.dose!.needsCaution })
    const { amount, unit, wholeAmount, working } = bench.opened(acid)
    expect(unit).toBe('mL')
    expect(amount).toBeCloseTo(wholeAmount! / 2, 6)
    expect(working!.calculation).toBe('acidBase.dose')
    expect(working!.inputs).toMatchObject({ celsius: 21, litres: 640, measuredPh: 4.92, aimPh: 4.5 })
    expect(working!.steps.length).toBeGreaterThan(5)
  })

  it('waits ten minutes and three turnovers', () => {
    const { bench, exception } = high()
    const { wait } = bench.remedy(exception, 'acid:acetic-acid-28')
    // 640 L at 160 L/min: a turnover of four minutes.
    expect(wait).toEqual({ seconds: 600 + 3 * 240, turnovers: 3, secondsPerTurnover: 240 })
  })

  it('closes the exception when the re-check is in limits', () => {
    const { bench, exception } = high()
    bench.pour(bench.remedy(exception, 'acid:acetic-acid-28'), { lot: 'A1' })
    bench.read('neg-1-fix-ph', 4.69)
    expect(bench.state.exceptions.all[exception]!.state).toBe('closed')
  })

  it('asks for a new confirmation before the next portion, and works it out anew from the re-check', () => {
    const { bench, exception } = high()
    const first = bench.pour(bench.remedy(exception, 'acid:acetic-acid-28'), { lot: 'A1' })
    bench.read('neg-1-fix-ph', 4.74)
    const second = bench.remedy(exception, 'acid:acetic-acid-28')
    expect(second.dose!.portion).toBe(2)
    expect(bench.reveal(second).ok).toBe(false)
    const revealed = bench.opened(second)
    expect(revealed.working!.inputs.measuredPh).toBe(4.74)
    expect(revealed.amount).toBeLessThanOrEqual(first.amount + 1e-9)
    expect(revealed.amount).toBeGreaterThan(0)
  })
})
