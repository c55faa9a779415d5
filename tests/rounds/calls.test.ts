import { describe, expect, it } from 'vitest'
import { callsAt } from '../../src/rounds/calls.ts'
import { Bench } from '../corrections/kit.ts'

const minute = 60_000

/** Only two checks and one machine, so that what calls is easy to see. */
const bench = () =>
  new Bench((plan) => {
    plan.checks = plan.checks.filter(({ id }) => ['neg-1-dev-temp', 'neg-1-fix-ph', 'neg-1-fix-sulfite', 'neg-1-fix-temp', 'exhaust', 'eyewash'].includes(id))
    for (const check of plan.checks) if (check.id !== 'neg-1-dev-temp') check.schedule = { kind: 'interval', minutes: 48 * 60, graceMinutes: 60 }
  })
const called = (it: Bench) => callsAt(it.state, it.plan, it.now)

describe('what calls for somebody', () => {
  it('is a check that falls due, from that instant, once', () => {
    const it = bench()
    it.safe()
    it.read('neg-1-fix-ph', 4.5)
    it.read('neg-1-dev-temp', 21)
    expect(called(it)).toEqual({ calls: [], nextAt: it.now + 30 * minute })
    it.wait(30)
    const [call] = called(it).calls
    expect(call).toMatchObject({ why: 'due', check: 'neg-1-dev-temp', at: it.now })
    it.wait(5)
    expect(called(it).calls.map(({ key }) => key)).toEqual([call!.key])
  })

  it('is a reading to be confirmed, and a bath that has mixed, in the place of the check being due', () => {
    const it = bench()
    it.read('neg-1-dev-temp', 21)
    it.safe()
    const exception = it.read('neg-1-fix-ph', 4.92)
    expect(called(it).calls).toMatchObject([{ why: 'toConfirm', exception }])
    it.wait(2).read('neg-1-fix-ph', 4.92)
    expect(called(it).calls).toEqual([])
    it.pour(it.remedy(exception, 'acid:acetic-acid-28'), { mix: false })
    const { calls, nextAt } = called(it)
    expect(calls).toEqual([])
    // Ten minutes of pouring and three turnovers of four minutes; the temperature is due after that.
    expect(nextAt).toBe(it.now + 22 * minute)
    it.wait(22)
    expect(called(it).calls).toMatchObject([{ why: 'mixed', exception, at: it.now }])
  })
})
