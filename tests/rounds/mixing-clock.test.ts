import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { MixingClock } from '../../src/rounds/mixing-clock.ts'

const minute = 60_000

/** A page at noon, whose clocks are moved by hand. */
const page = () => {
  const at = { wall: Date.parse('2026-01-12T12:00:00Z'), mono: 5_000, naps: 0 }
  const clock = new MixingClock({ now: () => at.wall, mono: () => at.mono, naps: () => at.naps })
  const pass = (minutes: number): void => {
    at.wall += minutes * minute
    at.mono += minutes * minute
  }
  return { at, clock, pass, until: at.wall + 20 * minute }
}

describe('how long a bath still mixes', () => {
  it('runs down as time passes', () => {
    const { clock, pass, until } = page()
    expect(clock.left(until)).toBe(20 * minute)
    pass(8)
    expect(clock.left(until)).toBe(12 * minute)
  })

  it.each([60, -60])('is not changed by a clock that is set by %d minutes in sight, however often the screen is opened', (step) => {
    const { at, clock, pass, until } = page()
    clock.left(until)
    pass(8)
    at.wall += step * minute
    expect(clock.left(until)).toBe(12 * minute)
    pass(2)
    expect(clock.left(until)).toBe(10 * minute)
  })

  it('of a dose that was poured after the clock was set is its whole time', () => {
    const { at, clock, until } = page()
    clock.left(until)
    at.wall += 60 * minute
    expect(clock.left(at.wall + 20 * minute)).toBe(20 * minute)
  })

  it('goes by the laboratory’s time where the phone slept out of sight and its other clock stood still', () => {
    const { at, clock, until } = page()
    clock.left(until)
    at.naps++
    at.wall += 15 * minute
    expect(clock.left(until)).toBe(5 * minute)
  })

  it('is not made longer by a clock that was set back out of sight', () => {
    const { at, clock, pass, until } = page()
    clock.left(until)
    pass(8)
    at.naps++
    at.wall -= 60 * minute
    expect(clock.left(until)).toBe(12 * minute)
  })

  it('never grows, whatever the clocks do', () => {
    const steps = fc.array(fc.record({ wall: fc.integer({ min: -90, max: 90 }), mono: fc.nat(30), naps: fc.nat(1) }), { maxLength: 20 })
    fc.assert(
      fc.property(steps, (taken) => {
        const { at, clock, until } = page()
        let before = clock.left(until)
        for (const { wall, mono, naps } of taken) {
          at.wall += wall * minute
          at.mono += mono * minute
          at.naps += naps
          const left = clock.left(until)
          expect(left).toBeLessThanOrEqual(before)
          before = left
        }
      }),
    )
  })
})
