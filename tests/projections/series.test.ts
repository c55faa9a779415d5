import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { StripCheck } from '../../src/plan/check.ts'
import type { CheckId, StationId } from '../../src/plan/ids.ts'
import { eventsOf, figureSeriesOf, gapsOf, seriesCsv, seriesOf, shiftBorders } from '../../src/projections/series.ts'
import { hour, LabLog, minute, smallPlan } from './log.ts'

const start = Date.parse('2026-01-12T05:00:00Z')
const ph = 'neg-1-fix-ph' as CheckId
const plan = smallPlan(demoLab(), ph, 'neg-1-strip')
const strip = plan.checks.find((it): it is StripCheck => it.kind === 'strip')!
const phCheck = plan.checks.find(({ id }) => id === ph)!

describe('the series of a chart', () => {
  it('holds every reading as it stands now: amended ones with their new value, withdrawn ones not at all', () => {
    const log = new LabLog(plan, start)
    const wrong = log.reading(ph, 4.92, start + minute)
    log.reading(ph, 4.5, start + 30 * minute)
    const back = log.reading(ph, 4.6, start + 60 * minute)
    log.say({ kind: 'amend', data: { ref: wrong, data: log.readingData(ph, 4.52), why: 'slip' }, at: start + 70 * minute })
    log.say({ kind: 'withdraw', data: { ref: back, why: 'wrong tank' }, at: start + 80 * minute })
    expect(seriesOf(log.lab().ledger, ph).map(({ value, verdict }) => [value, verdict])).toEqual([[4.52, 'IN'], [4.5, 'IN']])
  })

  it('a strip figure is charted as its distance from the aim of its batch, with a verdict of its own', () => {
    const log = new LabLog(plan, start)
    const read = (gamma: number, batch: string, aims: Record<string, number> | undefined, at: number): void =>
      void log.say({ kind: 'strip', data: { check: strip.id, plan: log.planId, densities: {}, figures: { gamma, baseFog: 9 }, verdict: 'ACT', batch, ...(aims ? { aims } : {}) }, at })
    read(0.66, 'B 14', undefined, start + minute)
    read(0.67, 'B 15', { gamma: 0.67 }, start + 2 * minute)
    const points = figureSeriesOf(log.lab().ledger, strip, 'gamma')
    expect(points.map(({ keyed, found, verdict, batch }) => [keyed, found, verdict, batch])).toEqual([['+0.01', 0.66, 'IN', 'B 14'], ['0.00', 0.67, 'IN', 'B 15']])
    expect(gapsOf(points, strip), 'no run reaches from one batch into the next').toEqual([1])
  })

  it('a reading that was missed is a gap', () => {
    const log = new LabLog(plan, start)
    const every = phCheck.schedule.kind === 'interval' ? phCheck.schedule.minutes : 480
    for (const at of [0, 1, 2, 5, 6]) log.reading(ph, 4.5, start + minute + at * every * minute)
    expect(gapsOf(seriesOf(log.lab().ledger, ph), phCheck)).toEqual([3])
  })

  it('adds, new baths, bleeds, batches and plans are marks; what befell another bath is not', () => {
    const log = new LabLog(plan, start)
    const out = log.reading(ph, 4.92, start + minute)
    log.acid(out, start + 2 * minute)
    log.acid(undefined, start + 3 * minute, { station: 'pos-2-fix' as StationId })
    log.say({ kind: 'runOff', data: { station: 'neg-1-fix' as StationId, waste: 'fixing', litres: 20, destination: { to: 'recovery' } }, at: start + 4 * minute })
    log.say({ kind: 'close', data: { exception: out, reason: 'bathReplaced' }, at: start + 5 * minute })
    log.say({ kind: 'stripBatch', data: { check: strip.id, batch: 'B 15', aims: {} }, at: start + 6 * minute })
    const { ledger } = log.lab()
    expect(eventsOf(ledger, plan, { station: 'neg-1-fix' as StationId, check: ph }).map(({ kind }) => kind)).toEqual(['plan', 'add', 'runOff', 'bathReplaced'])
    expect(eventsOf(ledger, plan, { station: strip.station, check: strip.id }).map(({ kind }) => kind)).toEqual(['plan', 'stripBatch'])
  })

  it('borders of shifts are marks as long as they can be told apart', () => {
    const borders = shiftBorders(plan, { from: start + 0.5, to: start + 24 * hour })
    expect(borders).toHaveLength(3)
    expect(shiftBorders(plan, { from: start, to: start + 30 * 24 * hour })).toEqual([])
  })

  it('goes out as CSV with times in ISO 8601 and what was keyed', () => {
    const log = new LabLog(plan, start)
    log.reading(ph, 4.5, start, { keyed: '4.50' })
    expect(seriesCsv(seriesOf(log.lab().ledger, ph), 'pH').split('\r\n').slice(0, 2)).toEqual(['time,value,unit,verdict,found,batch,entry', expect.stringMatching(/^2026-01-12T05:00:00\.000Z,4\.50,pH,IN,,,/)])
  })
})
