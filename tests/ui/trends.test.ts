import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chartPicture, signalsAt } from '../../src/ui/trends/pictures.ts'
import { controlChart } from '../../src/projections/control-chart.ts'
import type { SeriesPoint } from '../../src/projections/series.ts'
import { thin } from '../../src/ui/trends/thin.ts'
import { timeTicks } from '../../src/ui/trends/time-ticks.ts'
import { moved, showing, within, zoomed } from '../../src/ui/trends/window.ts'

const hour = 3_600_000

describe('thinning a line for a screen', () => {
  const series = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 500, maxLength: 3000 })

  it('keeps the highest and the lowest of every column: no outlier is lost', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 10, max: 60 }), (values, columns) => {
        const times = values.map((_, index) => index * 60_000)
        const [from, to] = [0, times.at(-1)! + 1]
        const kept = new Set(thin({ times, values, from, to, columns }))
        const width = (to - from) / columns
        for (let column = 0; column < columns; column++) {
          const inside = values.flatMap((value, index) => (Math.floor((times[index]! - from) / width) === column ? [[index, value] as const] : []))
          if (inside.length === 0) continue
          const shown = inside.filter(([index]) => kept.has(index)).map(([, value]) => value)
          expect(Math.max(...shown)).toBe(Math.max(...inside.map(([, value]) => value)))
          expect(Math.min(...shown)).toBe(Math.min(...inside.map(([, value]) => value)))
        }
      }),
    )
  })

  it('a hundred thousand points become a few to a column, in order', () => {
    const values = Float64Array.from({ length: 100_000 }, (_, index) => Math.sin(index))
    values[54_321] = 50
    const times = Float64Array.from(values, (_, index) => index)
    const kept = thin({ times, values, from: 0, to: 100_000, columns: 300 })
    expect(kept.length).toBeLessThanOrEqual(1204)
    expect(kept).toContain(54_321)
    expect(kept.every((index, place) => place === 0 || index > kept[place - 1]!)).toBe(true)
  })

  it('few points are all kept, with one beyond each edge', () => {
    expect(thin({ times: [0, 1, 2, 3, 4, 5], values: [0, 0, 0, 0, 0, 0], from: 2, to: 3.5, columns: 300 })).toEqual([1, 2, 3, 4])
  })

  it('skips what is not there', () => {
    const values = Array.from({ length: 2000 }, (_, index) => (index < 1000 ? Number.NaN : index))
    const times = values.map((_, index) => index)
    expect(thin({ times, values, from: 0, to: 2000, columns: 20 })).toContain(1000)
  })
})

describe('the window of a chart', () => {
  const extent = { from: 0, to: 100 * hour }
  it('is moved, not cut, at the ends', () => {
    expect(within({ from: -10 * hour, to: 10 * hour }, extent)).toEqual({ from: 0, to: 20 * hour })
    expect(moved({ from: 80 * hour, to: 100 * hour }, extent, 0.5)).toEqual({ from: 80 * hour, to: 100 * hour })
  })
  it('comes closer about a place that stays where it is, and no closer than there is to see', () => {
    const closer = zoomed({ from: 0, to: 100 * hour }, extent, 0.5, 25 * hour)
    expect(closer).toEqual({ from: 12.5 * hour, to: 62.5 * hour })
    const closest = zoomed({ from: 0, to: hour / 6 }, extent, 0.5)
    expect(closest.to - closest.from).toBe(hour / 6)
    expect(zoomed({ from: 0, to: 90 * hour }, extent, 2)).toEqual(extent)
  })
  it('is moved only where the reading lies outside it', () => {
    const window = { from: 10 * hour, to: 20 * hour }
    expect(showing(window, extent, 15 * hour)).toBe(window)
    expect(showing(window, extent, 50 * hour)).toEqual({ from: 45 * hour, to: 55 * hour })
  })
})

describe('times along the foot', () => {
  const ticks = (from: string, to: string) => timeTicks({ from: Date.parse(from), to: Date.parse(to), timeZone: 'Europe/Lisbon', language: 'en', most: 4 }).map(({ at, text }) => `${new Date(at).toISOString().slice(0, 16)} ${text}`)
  it('are round in the laboratory’s own time, on the night when the clock changes too', () => {
    expect(ticks('2026-03-28T20:00:00Z', '2026-03-29T12:00:00Z')).toEqual(['2026-03-28T20:00 20:00', '2026-03-29T00:00 29 Mar', '2026-03-29T03:00 04:00', '2026-03-29T07:00 08:00', '2026-03-29T11:00 12:00'])
    expect(ticks('2026-06-01T05:00:00Z', '2026-06-01T13:00:00Z')).toEqual(['2026-06-01T05:00 06:00', '2026-06-01T07:00 08:00', '2026-06-01T09:00 10:00', '2026-06-01T11:00 12:00', '2026-06-01T13:00 14:00'])
  })
  it('go up to years', () => {
    expect(ticks('2020-05-01T00:00:00Z', '2024-02-01T00:00:00Z')).toEqual(['2021-01-01T00:00 2021', '2022-01-01T00:00 2022', '2023-01-01T00:00 2023', '2024-01-01T00:00 2024'])
  })
})

describe('the four charts of one series', () => {
  const values = [...Array.from({ length: 30 }, (_, index) => 4.5 + 0.02 * Math.sin(index * 2.1)), 4.9]
  const points = values.map((value, index): SeriesPoint => ({ id: String(index) as never, time: index * hour, value, keyed: value.toFixed(2), verdict: value > 4.7 ? 'ACT' : 'IN' }))
  const limits = { aim: 4.5, actionLow: 4.3, actionHigh: 4.7 }
  const charted = controlChart({ values, gapsBefore: [], limits: { by: 'computed' } })!
  const asked = { points, limits, by: 'plan', analysis: { charted, offset: 0 }, forecast: undefined } as const

  it('readings lie between the plan’s limits or their own', () => {
    expect(chartPicture('readings', asked).limits.map(({ at }) => at)).toEqual([4.7, 4.5, 4.3])
    expect(chartPicture('readings', { ...asked, by: 'computed' }).limits.map(({ at }) => at)).toEqual([charted.upper, charted.centre, charted.lower])
  })
  it('a rule stands on its point, and says so', () => {
    expect(chartPicture('readings', asked).flags.find(({ index }) => index === 30)?.what).toContain('1')
    expect(signalsAt(asked.analysis, 30)).toMatchObject({ range: true })
    expect(signalsAt(asked.analysis, 30).rules).toContain(1)
  })
  it('range, average and sums mean the same reading by the same index, however much was left out before', () => {
    const late = { ...asked, points: [...points.slice(0, 5), ...points], analysis: { charted, offset: 5 } }
    for (const name of ['range', 'average', 'sums'] as const) {
      const { lines, verdictAt } = chartPicture(name, late)
      expect(lines[0]!.values).toHaveLength(36)
      expect(Number.isNaN(lines[0]!.values[4]!)).toBe(true)
      expect(verdictAt(20, 0)).toBe('IN')
    }
    expect(chartPicture('range', late).verdictAt(35, 0)).toBe('ACT')
  })
})
