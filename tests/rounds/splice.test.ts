import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { secondsLeft, spliceSeconds, spliceState, spliceWindow } from '../../src/rounds/splice.ts'

const foot = 0.3048 // m, exactly (international foot, 1959)

describe('the window of a splice', () => {
  // Trade arithmetic, elevator ft ÷ speed × 60: 100 ft of reserve gives 60 s at 100 ft/min and 34 s at 175 ft/min.
  it('is 60 s on the negative machine and 34 s on the positive with a hundred feet of reserve', () => {
    expect(spliceSeconds({ reserveMetres: 100 * foot, metresPerMinute: 100 * foot })).toBeCloseTo(60, 9)
    expect(Math.round(spliceSeconds({ reserveMetres: 100 * foot, metresPerMinute: 175 * foot }))).toBe(34)
    const [negative] = demoLab().machines
    expect(spliceSeconds(spliceWindow(negative!, negative!.aimMetresPerMinute, 0)!)).toBeCloseTo(60, 9)
  })

  it('counts down from the moment the tail is held, and goes on below nought', () => {
    const window = { reserveMetres: 100 * foot, metresPerMinute: 100 * foot, heldAt: 10_000 }
    expect(secondsLeft(window, 10_000)).toBeCloseTo(60, 9)
    expect(secondsLeft(window, 65_000)).toBeCloseTo(5, 9)
    expect(secondsLeft(window, 75_000)).toBeCloseTo(-5, 9)
  })

  it('says when to hurry, and when no join can be made any more', () => {
    const window = { reserveMetres: 100 * foot, metresPerMinute: 100 * foot, heldAt: 0 }
    expect([10, 39, 41, 51, 60].map((seconds) => spliceState(window, seconds * 1000))).toEqual(['ample', 'ample', 'hurry', 'lastSeconds', 'empty'])
  })

  it('does not run out at a standstill, and is none without a reserve', () => {
    expect(secondsLeft({ reserveMetres: 30, metresPerMinute: 0, heldAt: 0 }, 1e9)).toBe(Number.POSITIVE_INFINITY)
    expect(spliceState({ reserveMetres: 0, metresPerMinute: 30, heldAt: 0 }, 0)).toBe('empty')
    const { reserveMetres: _, ...without } = demoLab().machines[0]!
    expect(spliceWindow(without, 30, 0)).toBeUndefined()
  })
})
