import type { DisplayUnits } from '../../plan/lab-plan.ts'
import type { EdgeUnits, UnitAtEdge } from './form.ts'

const same = (unit: string): UnitAtEdge => ({ shown: unit, toShown: (value) => value, fromShown: (value) => value })
const times = (shown: string, factor: number): UnitAtEdge => ({ shown, toShown: (value) => value / factor, fromShown: (value) => value * factor })

/** Exact by definition: yard and pound agreement of 1959; US gallon of 231 cubic inches; UK gallon, Weights and Measures Act 1985. */
const metresPerFoot = 0.3048
const gramsPerOunce = 28.349523125
const litresPer = { L: 1, 'US gal': 3.785411784, 'UK gal': 4.54609 } as const

/**
 * The units in which the laboratory reads. Strengths (g/L), areas and rates by area stay metric: printed tables of the trade
 * mix gallons and ounces in ways that cannot be told apart afterwards.
 */
export const edgeUnits = (units: DisplayUnits | undefined): EdgeUnits => {
  if (!units) return same
  return (unit) => {
    switch (unit) {
      case '°C':
        return units.temperature === '°F' ? { shown: '°F', toShown: (value) => value * 1.8 + 32, fromShown: (value) => (value - 32) / 1.8 } : same(unit)
      case 'm':
      case 'm/min':
        return units.length === 'ft' ? times(unit.replace(/^m/, 'ft'), metresPerFoot) : same(unit)
      case 'L':
      case 'L/min':
        return units.volume === 'L' ? same(unit) : times(unit.replace(/^L/, units.volume), litresPer[units.volume])
      case 'g':
        return units.mass === 'oz' ? times('oz', gramsPerOunce) : same(unit)
      default:
        return same(unit)
    }
  }
}
