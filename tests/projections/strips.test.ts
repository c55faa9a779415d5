import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId } from '../../src/plan/ids.ts'
import { batchAt, keptStrips } from '../../src/projections/strips.ts'
import { LabLog, minute, smallPlan } from './log.ts'

const start = Date.parse('2026-01-12T06:00:00Z')
const check = 'neg-1-strip' as CheckId
const plan = smallPlan(demoLab(), check)

describe('strips and their batches', () => {
  it('a strip belongs to the batch in use at its time', () => {
    const log = new LabLog(plan, start)
    log.say({ kind: 'stripBatch', data: { check, batch: 'B 14', aims: { '1': 0.24 } }, at: start + minute })
    log.say({ kind: 'stripBatch', data: { check, batch: 'B 15', aims: { '1': 0.26 } }, at: start + 60 * minute })
    const strips = log.lab().state.strips[check]
    expect(batchAt(strips, start)).toBeUndefined()
    expect(batchAt(strips, start + 59 * minute)?.batch).toBe('B 14')
    expect(batchAt(strips, start + 60 * minute)?.aims).toEqual({ '1': 0.26 })
  })

  it('the last ones stay at hand to be drawn over; a withdrawn one does not count', () => {
    const log = new LabLog(plan, start)
    const ids = Array.from({ length: keptStrips + 3 }, (_, index) => log.strip(check, 'IN', start + index * minute))
    log.say({ kind: 'withdraw', data: { ref: ids.at(-1)!, why: 'wrong strip' }, at: start + 60 * minute })
    const recent = log.lab().state.strips[check]!.recent
    expect(recent.map(({ id }) => id)).toEqual(ids.slice(2, -1))
  })
})
