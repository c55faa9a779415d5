import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { describe, expect, it } from 'vitest'
import { fittedLaw } from '../../../src/science/develop/least-squares.ts'

// NIST Statistical Reference Datasets, Misra1a: y = b1 (1 − exp(−b2 x)), the shape of gamma against development time.
const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0]
const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78]
const certified = { b1: 238.94212918, b2: 5.5015643181e-4 }

describe('the fit of development, by another method', () => {
  it.each([[500, 1e-4], [250, 5e-4]])('a general Levenberg–Marquardt from NIST’s start %d, %d ends where ours does', (b1, b2) => {
    // In units in which both constants lie about 1, as that library wants it.
    const scaled = { x: x.map((it) => it / 1000), y: y.map((it) => it / 100) }
    const { parameterValues } = levenbergMarquardt(scaled, ([p, q]) => (t: number) => p! * (1 - Math.exp(-q! * t)), {
      initialValues: [b1 / 100, b2 * 1000], maxIterations: 500, damping: 1e-3, gradientDifference: 1e-7, errorTolerance: 1e-16,
    })
    const ours = fittedLaw(x.map((minutes, index) => ({ minutes, gamma: y[index]! })))!
    expect(parameterValues[0]! * 100).toBeCloseTo(ours.gammaInfinity, 3)
    expect(parameterValues[1]! / 1000).toBeCloseTo(ours.ratePerMinute, 8)
    expect(Math.abs(ours.gammaInfinity / certified.b1 - 1)).toBeLessThan(1e-9)
    expect(Math.abs(ours.ratePerMinute / certified.b2 - 1)).toBeLessThan(1e-9)
  })
})
