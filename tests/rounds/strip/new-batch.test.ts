import { describe, expect, it } from 'vitest'
import type { CheckId } from '../../../src/plan/ids.ts'
import { batchByCrossover, batchByMean, batchByReference, stripsOf } from '../../../src/rounds/strip/new-batch.ts'
import { wholeDensity } from '../../../src/rounds/strip/auto-advance.ts'

const check = 'neg-1-strip' as CheckId

describe('a new batch of strips', () => {
  it('K-01: aim = reference read here + correction printed for the batch', () => {
    const batch = batchByReference({ check, batch: 'B', reference: { LD: 0.58, HD: 1.31, Dmin: 0.23 }, correction: { LD: 0.02, HD: -0.03 } })
    expect(batch.aims).toEqual({ LD: 0.6, HD: 1.28, Dmin: 0.23 })
  })

  it('K-05: the new aims carry on the old ones, less what the process does that day', () => {
    const strips = (...densities: number[]) => densities.map((LD) => ({ LD, HD: 1.2 }))
    const batch = batchByCrossover({ check, batch: 'B', from: { batch: 'A', aims: { LD: 0.6 } }, old: [{ LD: 0.62 }, { LD: 0.61 }, { LD: 0.63 }], fresh: strips(0.65, 0.66, 0.64).map(({ LD }) => ({ LD })) })
    expect(batch.aims).toEqual({ LD: 0.63 })
    expect(batch.processRuns).toEqual({ LD: 0.02 })
  })

  it('a step read on two strips only has no new aim; where none is enough, there is no batch', () => {
    const from = { batch: 'A', aims: { LD: 0.6, HD: 1.3 } }
    const old = [{ LD: 0.62, HD: 1.3 }, { LD: 0.61, HD: 1.3 }, { LD: 0.63 }]
    const fresh = [{ LD: 0.65, HD: 1.3 }, { LD: 0.66, HD: 1.3 }, { LD: 0.64, HD: 1.3 }]
    expect(Object.keys(batchByCrossover({ check, batch: 'B', from, old, fresh }).aims)).toEqual(['LD'])
    expect(() => batchByCrossover({ check, batch: 'B', from, old: old.slice(0, 2), fresh })).toThrow()
  })

  it('strips on aim can stand for a reference that never came', () => {
    expect(batchByMean({ check, batch: 'B', strips: [{ '1': 0.24, '2': 0.31 }, { '1': 0.26 }] }).aims).toEqual({ '1': 0.25 })
  })

  it('several strips are told apart by a blank line, and a fault is named by its line in the whole text', () => {
    expect(stripsOf('0.24\n0.31\n\n0.25\n0.32\n', ['1', '2'])).toEqual({ ok: true, strips: [{ '1': 0.24, '2': 0.31 }, { '1': 0.25, '2': 0.32 }] })
    expect(stripsOf('0.24\n0.31\n\n0.25\n3x2\n', ['1', '2'])).toMatchObject({ ok: false, problem: { code: 'notADensity', line: 5 } })
  })
})

describe('going on to the next step by itself', () => {
  it.each([
    ['0.31', '0.31'], ['.31', '0.31'], ['031', '0.31'], ['131', '1.31'], ['0.3', undefined], ['03', undefined], ['1.', undefined], ['0,31', '0.31'], ['1.311', undefined], ['', undefined],
  ])('%s is %s', (keyed, whole) => {
    expect(wholeDensity(keyed, 2)).toBe(whole)
  })
})
