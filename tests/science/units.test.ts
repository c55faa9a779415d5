import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { silverGramsPerAmpereHour } from '../../src/science/silver/faraday.ts'
import { alternativesTo, convert, quantities, quantityOf, shownIn, type Quantity } from '../../src/science/units.ts'

const kinds = Object.entries(quantities) as [Quantity, (typeof quantities)[Quantity]][]
const pairs = kinds.flatMap(([, units]) => units.flatMap((from) => units.map((to) => ({ from: from.symbol, to: to.symbol }))))

describe('converting units', () => {
  it.each([
    // Exact by definition, unless a source is named.
    { value: 68, from: '°F', to: '°C', gives: 20 },
    { value: -40, from: '°C', to: '°F', gives: -40 },
    { value: 9, from: 'F°', to: 'K', gives: 5 },
    { value: 1, from: 'US gal', to: 'L', gives: 3.785411784 },
    { value: 1, from: 'UK gal', to: 'L', gives: 4.54609 },
    { value: 128, from: 'US fl oz', to: 'US gal', gives: 1 },
    { value: 160, from: 'UK fl oz', to: 'UK gal', gives: 1 },
    { value: 16, from: 'oz', to: 'lb', gives: 1 },
    { value: 1, from: 'lb', to: 'g', gives: 453.59237 },
    { value: 1, from: 'oz', to: 'grain', gives: 437.5 },
    { value: 1000, from: 'ft', to: 'm', gives: 304.8 },
    { value: 100, from: 'ft/min', to: 'm/min', gives: 30.48 },
    { value: 1, from: 'ft²', to: 'm²', gives: 0.09290304 },
    { value: 1, from: 'psi', to: 'kPa', gives: 6.894757293168361 }, // NIST SP 811, appendix B: 6.894757 E+00
    { value: 1, from: 'inHg', to: 'kPa', gives: 3.386389 }, // NIST SP 811, appendix B, conventional
    { value: 1, from: 'ton', to: 'kW', gives: 3.516852842 }, // NIST SP 811, appendix B: 3.516853 E+00
    { value: 12_000, from: 'Btu/h', to: 'ton', gives: 1 },
    { value: 1, from: 'oz/US gal', to: 'g/L', gives: 7.489151707 }, // NIST SP 811, appendix B: 7.489152 E+00 kg/m³
    { value: 1, from: 'oz/UK gal', to: 'g/L', gives: 6.236023291 }, // NIST SP 811, appendix B: 6.236023 E+00 kg/m³
    { value: 5, from: 'A/ft²', to: 'A/m²', gives: 53.81955 }, // NIST SP 811, appendix B: 1 A/ft² = 1.076391 E+01 A/m²
  ])('$value $from is $gives $to', ({ value, from, to, gives }) => {
    expect(convert({ value, from, to })).toBeCloseTo(gives, 5)
  })

  it('100 ampere-hours plate 12.940 troy ounces of silver', () => {
    expect(convert({ value: 100 * silverGramsPerAmpereHour, from: 'g', to: 'oz t' })).toBeCloseTo(12.94, 3)
  })

  it('there and back is the same number', () => {
    fc.assert(
      fc.property(fc.constantFrom(...pairs), fc.double({ min: -1e6, max: 1e6, noNaN: true }), ({ from, to }, value) => {
        const back = convert({ value: convert({ value, from, to }), from: to, to: from })
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(100, Math.abs(value)))
      }),
    )
  })

  it('by way of a third unit is the same as straight', () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.nat(), fc.nat(), fc.nat(), fc.double({ min: -1e4, max: 1e4, noNaN: true }), ([, units], a, b, c, value) => {
        const [from, via, to] = [a, b, c].map((index) => units[index % units.length]!.symbol) as [string, string, string]
        const straight = convert({ value, from, to })
        const around = convert({ value: convert({ value, from, to: via }), from: via, to })
        expect(Math.abs(around - straight)).toBeLessThanOrEqual(1e-11 * Math.max(100, Math.abs(straight)))
      }),
    )
  })

  it('is refused between kinds', () => {
    expect(() => convert({ value: 1, from: 'L', to: 'g' })).toThrow('L cannot be said in g')
    expect(() => convert({ value: 1, from: '°C', to: 'K' })).toThrow('°C cannot be said in K')
    expect(() => convert({ value: 1, from: 'cubit', to: 'm' })).toThrow('cubit cannot be said in m')
  })
})

describe('the table of units', () => {
  it('names each unit once, and each kind begins with its base unit', () => {
    const symbols = kinds.flatMap(([, units]) => units.map((unit) => unit.symbol))
    expect(new Set(symbols).size).toBe(symbols.length)
    for (const [, units] of kinds) expect(units[0]).toMatchObject({ factor: 1 })
  })

  it('knows the kind of a printed unit and its alternatives', () => {
    expect(quantityOf('g/L')).toBe('strength')
    expect(quantityOf('pH')).toBeUndefined()
    expect(alternativesTo('m/min')).toEqual(['m/min', 'ft/min'])
    expect(alternativesTo('mol/L')).toEqual(['mol/L'])
  })

  it('a laboratory that reads feet and gallons sees rates in them, and strengths in grams per litre', () => {
    const lab = { temperature: '°F', length: 'ft', volume: 'US gal', mass: 'oz' } as const
    expect(['°C', 'K', 'L', 'L/min', 'g', 'kg', 'm', 'm/min', 'mL/m', 'g/L', 'mL', 'mm', 'pH'].map((unit) => shownIn(lab, unit))).toEqual([
      '°F', 'F°', 'US gal', 'US gal/min', 'oz', 'lb', 'ft', 'ft/min', 'mL/ft', 'g/L', 'mL', 'mm', 'pH',
    ])
  })

  it('whatever a laboratory reads, the unit shown is of the same kind', () => {
    const labs = fc.record({
      temperature: fc.constantFrom('°C' as const, '°F' as const),
      length: fc.constantFrom('m' as const, 'ft' as const),
      volume: fc.constantFrom('L' as const, 'US gal' as const, 'UK gal' as const),
      mass: fc.constantFrom('g' as const, 'oz' as const),
    })
    const symbols = fc.constantFrom(...kinds.flatMap(([, units]) => units.map((unit) => unit.symbol)))
    fc.assert(fc.property(labs, symbols, (lab, symbol) => quantityOf(shownIn(lab, symbol)) === quantityOf(symbol)))
  })
})
