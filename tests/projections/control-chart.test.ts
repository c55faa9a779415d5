import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { baselineLength, controlChart, mostAnalysed, staysLevel } from '../../src/projections/control-chart.ts'

const computed = { by: 'computed' } as const
const chartOf = (values: readonly number[], more: Partial<Parameters<typeof controlChart>[0]> = {}) => controlChart({ values, gapsBefore: [], limits: computed, ...more })

describe('the control chart that Trends draws, against published values', () => {
  it('C-02, NIST/SEMATECH e-Handbook 6.3.2.2: individuals and moving range', () => {
    const chart = chartOf([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])!
    expect(chart.centre).toBeCloseTo(50.81, 9)
    // The handbook divides by 1.128 where the constant is 1.128379.
    expect(Math.abs(chart.upper - 55.8041)).toBeLessThan(0.002)
    expect(Math.abs(chart.lower - 45.8159)).toBeLessThan(0.002)
    expect(chart.rangeUpper).toBeCloseTo(6.135, 3)
    expect(chart.ranges.slice(1).map((range) => Number(range!.toFixed(1)))).toEqual([2, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5])
    expect(chart.flags).toEqual([])
  })

  it('C-09, twelve control gammas worked out apart', () => {
    const chart = chartOf([0.65, 0.66, 0.64, 0.65, 0.67, 0.66, 0.64, 0.63, 0.65, 0.66, 0.65, 0.64])!
    expect(chart.centre).toBeCloseTo(0.65, 9)
    expect(chart.lower).toBeCloseTo(0.61375, 4)
    expect(chart.upper).toBeCloseTo(0.68625, 4)
    expect(chart.rangeUpper).toBeCloseTo(0.04454, 4)
  })

  it('RR-1 and RR-6: the flag sits on the point that completes the pattern', () => {
    // A baseline of mean 0 and sigma 1 by its moving ranges, before the sequences of the reference.
    const one = 1.1283791670955126 / 2
    const base = Array.from({ length: baselineLength - 1 }, (_, index) => (index % 2 ? one : -one))
    const chart = (sequence: readonly number[]) => controlChart({ values: [...base, -0, ...sequence], gapsBefore: [baselineLength], limits: { by: 'plan', plan: { aim: 0 } } })!
    const flagsOf = (sequence: readonly number[], rule: number): number[] =>
      chart(sequence).flags.filter((flag) => flag.rule === rule && flag.index >= baselineLength).map(({ index }) => index - baselineLength + 1)
    expect(chart([0]).sigma).toBeCloseTo(1, 1)
    const scale = chart([0]).sigma
    const scaled = (sequence: readonly number[]): number[] => sequence.map((value) => value * scale)
    expect(flagsOf(scaled([0, 1.2, -0.5, 3.1, 0.4, -3.0, 2.9, -3.01]), 1)).toEqual([4, 8])
    expect(flagsOf(scaled([0.2, -0.9, -0.6, -0.2, 0.1, 0.5, 0.9, 1.4, 0.8]), 3)).toEqual([7, 8])
  })
})

describe('limits and baseline', () => {
  const steady = Array.from({ length: 40 }, (_, index) => 4.5 + 0.02 * Math.sin(index * 2.1))

  it('limits stay as the baseline set them, whatever comes after', () => {
    const before = chartOf(steady)!
    const after = chartOf([...steady, 5, 5.1, 5.2])!
    expect(after.upper).toBe(before.upper)
    expect(after.baseline).toEqual({ from: 0, count: baselineLength })
    expect(after.flags.some(({ index, rule }) => index === 40 && rule === 1)).toBe(true)
    expect(after.cusum.out).toContain(42)
    expect(after.ewma.out).toContain(42)
  })

  it('a baseline may begin at a reading that is named', () => {
    const chart = chartOf([...steady.map((value) => value + 1), ...steady], { baselineFrom: 40 })!
    expect(chart.centre).toBeCloseTo(4.5, 1)
    expect(chart.baseline.from).toBe(40)
  })

  it('by plan the centre is the aim of the plan', () => {
    expect(chartOf(steady, { limits: { by: 'plan', plan: { aim: 4.6 } } })!.centre).toBe(4.6)
  })

  it('a gap leaves no moving range across it', () => {
    expect(chartOf(steady, { gapsBefore: [10] })!.ranges[10]).toBeNull()
  })

  it('says nothing of too few readings, or of readings that are all the same', () => {
    expect(chartOf(steady.slice(0, 7))).toBeUndefined()
    expect(chartOf(Array.from({ length: 30 }, () => 21))).toBeUndefined()
  })

  it('takes as many as the calculations take', () => {
    const many = Array.from({ length: mostAnalysed }, (_, index) => 4.5 + 0.02 * Math.sin(index * 2.1))
    expect(chartOf(many)!.ewma.values).toHaveLength(mostAnalysed)
    expect(chartOf([...many, 4.5])).toBeUndefined()
  })

  it('a tank that empties is not held against run rules', () => {
    const { checks } = demoLab()
    expect(staysLevel(checks.find(({ id }) => id === 'neg-1-replenisher-left')!)).toBe(false)
    expect(staysLevel(checks.find(({ id }) => id === 'neg-1-fix-ph')!)).toBe(true)
  })
})
