import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseKeyed } from '../../src/rounds/keyed.ts'

const meter = { decimals: 2, low: 0, high: 14 }
const dipMark = { decimals: 0, low: -150, high: 50 }
const hydrometer = { decimals: 3, low: 0.99, high: 1.2 }
const codeOf = (text: string, expected = meter): string => {
  const keyed = parseKeyed(text, expected)
  return keyed.ok ? 'ok' : keyed.problem.code
}

describe('what was keyed', () => {
  it('is a number as it was keyed: 8.60 stays 8.60', () => {
    expect(parseKeyed('8.60', meter)).toEqual({ ok: true, value: 8.6, keyed: '8.60' })
    expect(parseKeyed(' 4 ', meter)).toEqual({ ok: true, value: 4, keyed: '4' })
  })

  it('may have a comma for its point, and a point at either end', () => {
    expect(parseKeyed('4,92', meter)).toEqual({ ok: true, value: 4.92, keyed: '4.92' })
    expect(parseKeyed('.5', meter)).toEqual({ ok: true, value: 0.5, keyed: '0.5' })
    expect(parseKeyed('4.', meter)).toEqual({ ok: true, value: 4, keyed: '4' })
  })

  it.each([
    ['nothing', '', 'empty'],
    ['blanks', '   ', 'empty'],
    ['a point alone', '.', 'empty'],
    ['two points', '4.9.2', 'twoPoints'],
    ['a point and a comma', '1.004,92', 'twoPoints'],
    ['letters', '4.9x', 'notANumber'],
    ['an exponent', '4e2', 'notANumber'],
    ['a minus in the middle', '4-9', 'notANumber'],
    ['more decimals than the meter shows', '4.923', 'tooManyDecimals'],
    ['more than the meter can show', '14.01', 'outOfRange'],
    ['a minus where there is none', '-1', 'outOfRange'],
  ])('is refused where it is %s', (_, text, code) => expect(codeOf(text)).toBe(code))

  it('may be below nought where the instrument shows it, with either minus sign', () => {
    expect(parseKeyed('-15', dipMark)).toEqual({ ok: true, value: -15, keyed: '-15' })
    expect(parseKeyed('−15', dipMark)).toEqual({ ok: true, value: -15, keyed: '-15' })
    expect(codeOf('-', dipMark)).toBe('empty')
    expect(codeOf('1.5', dipMark)).toBe('tooManyDecimals')
  })

  it('on an end of the instrument’s range is within it', () => {
    expect(codeOf('14.00')).toBe('ok')
    expect(codeOf('0')).toBe('ok')
    expect(codeOf('1.200', hydrometer)).toBe('ok')
  })

  it.each([
    ['492', meter, '4.92'],
    ['49.2', meter, '4.92'],
    ['1065', hydrometer, '1.065'],
    ['10.65', hydrometer, '1.065'],
    ['-1500', dipMark, '-150'],
  ])('%s on an instrument that cannot show it: was it %3$s, with the point where it belongs?', (text, expected, slip) => {
    expect(parseKeyed(text, expected)).toMatchObject({ ok: false, problem: { code: 'outOfRange', low: expected.low, high: expected.high, slip } })
  })

  it('offers no slip where no shift of the point would do', () => {
    expect(parseKeyed('-3', hydrometer)).toEqual({ ok: false, problem: { code: 'outOfRange', low: 0.99, high: 1.2 } })
  })

  it('gives back every number that the instrument can show, and never one outside its range', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 1600 }), (hundredths) => {
        const text = (hundredths / 100).toFixed(2)
        const keyed = parseKeyed(text, meter)
        expect(keyed.ok).toBe(hundredths >= 0 && hundredths <= 1400)
        if (keyed.ok) expect(keyed).toMatchObject({ value: hundredths / 100, keyed: text })
      }),
    )
  })

  it('never throws and never gives what is not a number, whatever is keyed', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,-−e+ x'.split('')), maxLength: 10 }), (text) => {
        const keyed = parseKeyed(text, meter)
        if (keyed.ok) {
          expect(Number(keyed.keyed)).toBe(keyed.value)
          expect(keyed.value).toBeGreaterThanOrEqual(meter.low)
          expect(keyed.value).toBeLessThanOrEqual(meter.high)
        }
      }),
    )
  })
})
