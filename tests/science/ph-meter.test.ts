import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { resultOf } from '../../src/science/evaluate.ts'
import { phMeterBuffer } from '../../src/science/phMeter/buffer.ts'
import { bufferKeys, bufferTables } from '../../src/science/phMeter/buffer-table.ts'
import { phMeterCalibrate } from '../../src/science/phMeter/calibrate.ts'
import { phMeterRead } from '../../src/science/phMeter/read.ts'
import { phMeterSlope } from '../../src/science/phMeter/slope.ts'

describe('a standard buffer', () => {
  it('lies between the rows of its table at every temperature', () => {
    fc.assert(
      fc.property(fc.constantFrom(...bufferKeys), fc.double({ min: 0, max: 40, noNaN: true }), (buffer, celsius) => {
        const { pH } = resultOf(phMeterBuffer, { buffer, celsius })
        const rows = bufferTables[buffer]
        const after = rows.findIndex(([t]) => t >= celsius)
        const near = [rows[Math.max(0, after - 1)]![1], rows[after]![1]]
        expect(pH).toBeGreaterThanOrEqual(Math.min(...near) - 1e-12)
        expect(pH).toBeLessThanOrEqual(Math.max(...near) + 1e-12)
      }),
    )
  })

  it('of the technical kind ends at 40 °C', () => {
    expect(() => resultOf(phMeterBuffer, { buffer: 'technical7', celsius: 45 })).toThrow(expect.objectContaining({ field: 'celsius', value: 45, allowed: expect.stringContaining('0 to 40 °C') }))
    expect(() => resultOf(phMeterBuffer, { buffer: 'borax', celsius: 51 })).toThrow(expect.objectContaining({ code: 'outOfRange', field: 'celsius' }))
  })
})

describe('a calibration', () => {
  /** Voltages of an electrode of known slope and offset. */
  const electrode = ({ slopePercent, offsetMillivolts }: { slopePercent: number; offsetMillivolts: number }, buffer: (typeof bufferKeys)[number], celsius: number) => ({
    buffer,
    celsius,
    millivolts: offsetMillivolts + (slopePercent / 100) * resultOf(phMeterSlope, { celsius }).millivoltsPerPh * (7 - resultOf(phMeterBuffer, { buffer, celsius }).pH),
  })

  it('finds the slope and offset that the voltages were made with, each buffer at its own temperature', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 110, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (slopePercent, offsetMillivolts, one, two) => {
          const made = { slopePercent, offsetMillivolts }
          const found = resultOf(phMeterCalibrate, { points: [electrode(made, 'phthalate', one), electrode(made, 'phosphate', two), electrode(made, 'borax', one)] })
          expect(found.slopePercent).toBeCloseTo(slopePercent, 8)
          expect(found.offsetMillivolts).toBeCloseTo(offsetMillivolts, 8)
          expect(found.residualPh).toBeCloseTo(0, 8)
        },
      ),
    )
  })

  it('makes the meter read each buffer as it should', () => {
    const points = [electrode({ slopePercent: 97, offsetMillivolts: 6 }, 'phosphate', 22), electrode({ slopePercent: 97, offsetMillivolts: 6 }, 'borax', 22)]
    const { slopePercent, offsetMillivolts } = resultOf(phMeterCalibrate, { points })
    for (const { buffer, celsius, millivolts } of points)
      expect(resultOf(phMeterRead, { millivolts, celsius, slopePercent, offsetMillivolts }).pH).toBeCloseTo(resultOf(phMeterBuffer, { buffer, celsius }).pH, 9)
  })

  const judged = (made: { slopePercent: number; offsetMillivolts: number }) => {
    const { acceptable, advice } = resultOf(phMeterCalibrate, { points: [electrode(made, 'phthalate', 25), electrode(made, 'borax', 25)] })
    return { acceptable, advice }
  }

  it.each([
    [99, 3, true, 'use'],
    [95, 15, true, 'use'],
    [94.9, 3, true, 'useAndCleanSoon'],
    [90, 30, true, 'useAndCleanSoon'],
    [105, -30, true, 'useAndCleanSoon'],
    [89.9, 0, false, 'cleanOrReplaceElectrode'],
    [105.1, 0, false, 'checkBuffersAndTemperature'],
    [99, 30.1, false, 'checkReferenceElectrode'],
  ])('with %s %% slope and %s mV offset: acceptable %s, advice %s', (slopePercent, offsetMillivolts, acceptable, advice) => {
    expect(judged({ slopePercent, offsetMillivolts })).toEqual({ acceptable, advice })
  })

  it('asks for fresh buffers when a third one lies off the line', () => {
    const made = { slopePercent: 98, offsetMillivolts: 2 }
    const spoilt = { ...electrode(made, 'borax', 25), millivolts: electrode(made, 'borax', 25).millivolts + 20 }
    expect(resultOf(phMeterCalibrate, { points: [electrode(made, 'phthalate', 25), electrode(made, 'phosphate', 25), spoilt] })).toMatchObject({ acceptable: false, advice: 'repeatWithFreshBuffers' })
  })

  it('is refused for one point, for one pH twice, and for voltages that rise', () => {
    const one = { buffer: 'borax', celsius: 25, millivolts: -120 } as const
    expect(() => resultOf(phMeterCalibrate, { points: [one] })).toThrow(expect.objectContaining({ code: 'tooFew', field: 'points' }))
    expect(() => resultOf(phMeterCalibrate, { points: [one, { ...one, celsius: 24 }] })).toThrow(expect.objectContaining({ code: 'noAnswer', field: 'points' }))
    expect(() => resultOf(phMeterCalibrate, { points: [one, { buffer: 'phosphate', celsius: 25, millivolts: -200 }] })).toThrow(expect.objectContaining({ field: 'points', allowed: expect.stringContaining('fall as the pH rises') }))
    expect(() => resultOf(phMeterCalibrate, { points: [one, { buffer: 'phosphate', pH: 6.86, celsius: 25, millivolts: 8 }] })).toThrow(expect.objectContaining({ code: 'exactlyOne', field: 'points[1]' }))
  })
})

describe('the meter', () => {
  it('refuses a voltage that means no pH', () => {
    expect(() => resultOf(phMeterRead, { millivolts: 900, celsius: 25, slopePercent: 98, offsetMillivolts: 0 })).toThrow(expect.objectContaining({ code: 'noAnswer', field: 'millivolts', value: 900 }))
  })

  it('reads pH 7 at its offset whatever the temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 100, noNaN: true }), fc.double({ min: -50, max: 50, noNaN: true }), (celsius, offsetMillivolts) => {
        expect(resultOf(phMeterRead, { millivolts: offsetMillivolts, celsius, slopePercent: 97, offsetMillivolts }).pH).toBe(7)
      }),
    )
  })
})
