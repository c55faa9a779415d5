import { describe, expect, it } from 'vitest'
import type { MachineId } from '../../src/plan/ids.ts'
import { secondsLeft, spliceState } from '../../src/rounds/splice.ts'
import { heldSeconds, isForgotten, spliceHeld, windowOf, type SpliceHeld } from '../../src/rounds/splice-held.ts'

// 30.48 m stored at 30.48 m/min: one minute, as the trade's sum gives it for 100 ft at 100 ft/min.
const held: SpliceHeld = { v: 1, machine: 'neg-1' as MachineId, reserveMetres: 30.48, metresPerMinute: 30.48, wall: 1_000_000, mono: 5_000, session: 'a' }
const at = (seconds: number, more: object = {}) => ({ wall: held.wall + seconds * 1000, mono: held.mono + seconds * 1000, session: 'a', ...more })
const left = (now: ReturnType<typeof at>): number | undefined => {
  const it = windowOf(held, now)
  return it && secondsLeft(it.window, it.now)
}

describe('a tail that is held', () => {
  it('leaves what the reserve leaves', () => {
    expect(left(at(0))).toBeCloseTo(60)
    expect(left(at(45))).toBeCloseTo(15)
    expect(left(at(70))).toBeCloseTo(-10)
  })

  it('goes on by the wall clock when the page was opened again', () => {
    expect(left(at(20, { session: 'b', mono: 3 }))).toBeCloseTo(40)
  })

  it('counts the time that the phone slept', () => {
    expect(left(at(40, { mono: held.mono + 2_000 }))).toBeCloseTo(20)
  })

  it('never gains time by a clock set back', () => {
    expect(left({ wall: held.wall - 3_600_000, mono: held.mono + 30_000, session: 'a' })).toBeCloseTo(30)
  })

  it('is not known after a restart with a clock set back, and is not guessed', () => {
    expect(heldSeconds(held, { wall: held.wall - 1, mono: 0, session: 'b' })).toBeUndefined()
    expect(windowOf(held, { wall: held.wall - 1, mono: 0, session: 'b' })).toBeUndefined()
  })

  it('hurries in the last third and begins no join in the last ten seconds', () => {
    const state = (seconds: number) => {
      const it = windowOf(held, at(seconds))!
      return spliceState(it.window, it.now)
    }
    expect([state(10), state(41), state(51), state(61)]).toEqual(['ample', 'hurry', 'lastSeconds', 'empty'])
  })

  it('is forgotten once it is long over', () => {
    expect(isForgotten(held, at(60))).toBe(false)
    expect(isForgotten(held, at(16 * 60))).toBe(true)
  })

  it('is read from the phone only as itself', () => {
    expect(spliceHeld.safeParse(JSON.parse(JSON.stringify(held))).success).toBe(true)
    expect(spliceHeld.safeParse({ ...held, v: 2 }).success).toBe(false)
  })
})
