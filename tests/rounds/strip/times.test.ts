import { describe, expect, it } from 'vitest'
import { demoLab } from '../../../src/demo/lab.ts'
import { machineOf } from '../../../src/plan/find.ts'
import { stripInFor, stripTimes, timeAfterMetres } from '../../../src/rounds/strip/times.ts'

const minute = 60_000
const machine = machineOf(demoLab(), 'neg-1' as never)
const at = Date.parse('2026-01-12T08:00:00Z')
const running = (metresPerMinute: number, from = at - 120 * minute) => ({ from, state: 'running' as const, metresPerMinute })
const minutes = (time: number): number => (time - at) / minute

describe('the bath time for which a strip speaks', () => {
  it('is path ÷ speed: 3 m feed, 30.48 m elevator, 198.12 m of developer at 30.48 m/min', () => {
    const { developer, out } = stripTimes({ spans: [running(30.48)] }, machine, at)
    expect(minutes(developer!.from)).toBeCloseTo(33.48 / 30.48, 4)
    // 198.12 ÷ 30.48 is 6.5 minutes in the developer.
    expect((developer!.to - developer!.from) / minute).toBeCloseTo(6.5, 4)
    expect(minutes(developer!.middle)).toBeCloseTo(33.48 / 30.48 + 3.25, 4)
    expect(minutes(out)).toBeCloseTo(860.94 / 30.48, 4)
  })

  it('counts a change of speed on the way', () => {
    const now = { spans: [running(30), { from: at + 10 * minute, state: 'running' as const, metresPerMinute: 15 }] }
    expect(minutes(timeAfterMetres(now, machine, at, 450))).toBeCloseTo(20, 6)
    expect(minutes(timeAfterMetres(now, machine, at + 20 * minute, -450))).toBeCloseTo(0, 6)
  })

  it('goes back from a strip that has just come out to when it went in', () => {
    const now = { spans: [running(30), { from: at + 10 * minute, state: 'running' as const, metresPerMinute: 28 }] }
    const { out } = stripTimes(now, machine, at)
    expect(Math.abs(stripInFor(now, machine, out) - at)).toBeLessThan(50)
  })

  it('takes the aim speed where nobody has spoken of the machine', () => {
    expect(minutes(timeAfterMetres(undefined, machine, at, 30.48))).toBeCloseTo(1, 6)
  })
})
