import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { hasRung, secondsToWait, startTimer, timer, type Clocks } from '../../src/rounds/timer.ts'

const noon = Date.parse('2026-01-12T12:00:00Z')
const clocks: Clocks = { wall: noon, mono: 5000, session: 'abcd0001' }

describe('a settling or mixing time', () => {
  it('runs on the clock that cannot be set, however the wall clock jumps', () => {
    const it = startTimer(90, clocks)
    expect(secondsToWait(it, { ...clocks, mono: 35_000, wall: noon + 3_600_000 })).toBe(60)
    expect(secondsToWait(it, { ...clocks, mono: 35_000, wall: noon - 3_600_000 })).toBe(60)
    expect(hasRung(it, { ...clocks, mono: 94_999 })).toBe(false)
    expect(hasRung(it, { ...clocks, mono: 95_000 })).toBe(true)
  })

  it('goes on after a restart by the wall clock', () => {
    const it = timer.parse(JSON.parse(JSON.stringify(startTimer(720, clocks))))
    expect(secondsToWait(it, { wall: noon + 300_000, mono: 12, session: 'abcd0002' })).toBe(420)
  })

  it('is waited for anew where the wall clock was set back meanwhile: too long is safe, too short is not', () => {
    const it = startTimer(720, clocks)
    expect(secondsToWait(it, { wall: noon - 1, mono: 12, session: 'abcd0002' })).toBe(720)
  })

  it('never asks for more than its time, and never for less than none', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), fc.integer({ min: 0, max: 10_000_000 }), fc.integer(), fc.boolean(), (seconds, passed, jump, isSame) => {
        const it = startTimer(seconds, clocks)
        const left = secondsToWait(it, { wall: noon + passed + jump, mono: isSame ? clocks.mono + passed : passed, session: isSame ? clocks.session : 'abcd0002' })
        expect(left).toBeGreaterThanOrEqual(0)
        expect(left).toBeLessThanOrEqual(seconds)
        if (isSame) expect(left).toBeCloseTo(Math.max(0, seconds - passed / 1000), 6)
      }),
    )
  })
})
