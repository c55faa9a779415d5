import { metresPerFoot } from './foot.ts'

/**
 * Units at the edge: calculations reckon in the metric units of the trade, screens show the laboratory's own. Each kind of quantity
 * lists its units with what one of them is in the kind's base unit, the first of the list; only temperature has another zero as well.
 *
 * Factors are exact by definition (international yard and pound agreement of 1959; US gallon of 231 cubic inches; UK gallon, Weights and Measures
 * Act 1985; BIPM, SI Brochure) unless a line says otherwise.
 */
export interface Unit {
  /** As printed beside a number. */
  symbol: string
  /** Code of the Unified Code for Units of Measure, for exports. */
  ucum: string
  /** Base units in one of it. */
  factor: number
  /** What it reads at the zero of the base unit; 0 when not given. */
  zero?: number
}


const feet = metresPerFoot
const ounce = 28.349523125 // g, avoirdupois
const pound = 453.59237 // g
const troyOunce = 31.1034768 // g
const usGallon = 3.785411784 // L
const ukGallon = 4.54609 // L
const squareFoot = feet ** 2 // m²
const psi = (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000 // kPa, pound-force on a square inch

export const quantities = {
  temperature: [
    { symbol: '°C', ucum: 'Cel', factor: 1 },
    { symbol: '°F', ucum: '[degF]', factor: 5 / 9, zero: 32 },
  ],
  temperatureDifference: [
    { symbol: 'K', ucum: 'K', factor: 1 },
    { symbol: 'F°', ucum: '[degF]', factor: 5 / 9 },
  ],
  volume: [
    { symbol: 'L', ucum: 'L', factor: 1 },
    { symbol: 'mL', ucum: 'mL', factor: 0.001 },
    { symbol: 'US gal', ucum: '[gal_us]', factor: usGallon },
    { symbol: 'UK gal', ucum: '[gal_br]', factor: ukGallon },
    { symbol: 'US fl oz', ucum: '[foz_us]', factor: usGallon / 128 },
    { symbol: 'UK fl oz', ucum: '[foz_br]', factor: ukGallon / 160 },
  ],
  mass: [
    { symbol: 'g', ucum: 'g', factor: 1 },
    { symbol: 'kg', ucum: 'kg', factor: 1000 },
    { symbol: 'oz', ucum: '[oz_av]', factor: ounce },
    { symbol: 'lb', ucum: '[lb_av]', factor: pound },
    { symbol: 'grain', ucum: '[gr]', factor: pound / 7000 },
    { symbol: 'oz t', ucum: '[oz_tr]', factor: troyOunce },
  ],
  length: [
    { symbol: 'm', ucum: 'm', factor: 1 },
    { symbol: 'ft', ucum: '[ft_i]', factor: feet },
    { symbol: 'mm', ucum: 'mm', factor: 0.001 },
    { symbol: 'in', ucum: '[in_i]', factor: feet / 12 },
  ],
  area: [
    { symbol: 'm²', ucum: 'm2', factor: 1 },
    { symbol: 'ft²', ucum: '[sft_i]', factor: squareFoot },
  ],
  time: [
    { symbol: 's', ucum: 's', factor: 1 },
    { symbol: 'min', ucum: 'min', factor: 60 },
    { symbol: 'h', ucum: 'h', factor: 3600 },
  ],
  speed: [
    { symbol: 'm/min', ucum: 'm/min', factor: 1 },
    { symbol: 'ft/min', ucum: '[ft_i]/min', factor: feet },
  ],
  areaRate: [
    { symbol: 'm²/min', ucum: 'm2/min', factor: 1 },
    { symbol: 'ft²/min', ucum: '[sft_i]/min', factor: squareFoot },
  ],
  flow: [
    { symbol: 'L/min', ucum: 'L/min', factor: 1 },
    { symbol: 'US gal/min', ucum: '[gal_us]/min', factor: usGallon },
    { symbol: 'UK gal/min', ucum: '[gal_br]/min', factor: ukGallon },
    { symbol: 'L/h', ucum: 'L/h', factor: 1 / 60 },
  ],
  pressure: [
    { symbol: 'kPa', ucum: 'kPa', factor: 1 },
    { symbol: 'psi', ucum: '[psi]', factor: psi },
    { symbol: 'bar', ucum: 'bar', factor: 100 },
    { symbol: 'hPa', ucum: 'hPa', factor: 0.1 },
    { symbol: 'inHg', ucum: "[in_i'Hg]", factor: 3.386389 }, // conventional, mercury at 0 °C
  ],
  strength: [
    { symbol: 'g/L', ucum: 'g/L', factor: 1 },
    { symbol: 'oz/US gal', ucum: '[oz_av]/[gal_us]', factor: ounce / usGallon },
    { symbol: 'oz/UK gal', ucum: '[oz_av]/[gal_br]', factor: ounce / ukGallon },
    { symbol: 'oz t/US gal', ucum: '[oz_tr]/[gal_us]', factor: troyOunce / usGallon },
    { symbol: 'oz t/UK gal', ucum: '[oz_tr]/[gal_br]', factor: troyOunce / ukGallon },
  ],
  replenishment: [
    { symbol: 'mL/m', ucum: 'mL/m', factor: 1 },
    { symbol: 'mL/ft', ucum: 'mL/[ft_i]', factor: 1 / feet },
    { symbol: 'US fl oz/100 ft', ucum: '[foz_us]/(100.[ft_i])', factor: (usGallon / 128) * (1000 / (100 * feet)) },
    { symbol: 'UK fl oz/100 ft', ucum: '[foz_br]/(100.[ft_i])', factor: (ukGallon / 160) * (1000 / (100 * feet)) },
  ],
  consumption: [
    { symbol: 'g/m', ucum: 'g/m', factor: 1 },
    { symbol: 'g/ft', ucum: 'g/[ft_i]', factor: 1 / feet },
    { symbol: 'oz/1000 ft', ucum: '[oz_av]/(1000.[ft_i])', factor: ounce / (1000 * feet) },
  ],
  coating: [
    { symbol: 'g/m²', ucum: 'g/m2', factor: 1 },
    { symbol: 'mg/ft²', ucum: 'mg/[sft_i]', factor: 0.001 / squareFoot },
  ],
  wash: [
    { symbol: 'L/m²', ucum: 'L/m2', factor: 1 },
    { symbol: 'US gal/1000 ft²', ucum: '[gal_us]/(1000.[sft_i])', factor: usGallon / (1000 * squareFoot) },
    { symbol: 'UK gal/1000 ft²', ucum: '[gal_br]/(1000.[sft_i])', factor: ukGallon / (1000 * squareFoot) },
  ],
  currentDensity: [
    { symbol: 'A/m²', ucum: 'A/m2', factor: 1 },
    { symbol: 'A/ft²', ucum: 'A/[sft_i]', factor: 1 / squareFoot },
  ],
  silverRate: [
    { symbol: 'g/h', ucum: 'g/h', factor: 1 },
    { symbol: 'oz t/h', ucum: '[oz_tr]/h', factor: troyOunce },
  ],
  coldPower: [
    { symbol: 'kW', ucum: 'kW', factor: 1 },
    { symbol: 'ton', ucum: '12000.[Btu_IT]/h', factor: (12_000 * 1.05505585262) / 3600 }, // of refrigeration: 12 000 Btu(IT) an hour
    { symbol: 'Btu/h', ucum: '[Btu_IT]/h', factor: 1.05505585262 / 3600 },
  ],
} as const satisfies Readonly<Record<string, readonly Unit[]>>

export type Quantity = keyof typeof quantities

const unitNamed = (symbol: string): { quantity: Quantity; unit: Unit } | undefined => {
  for (const [quantity, units] of Object.entries(quantities)) {
    const unit = units.find((each) => each.symbol === symbol)
    if (unit) return { quantity: quantity as Quantity, unit }
  }
  return undefined
}

/** The kind of quantity that a printed unit belongs to; undefined for units that are never converted (`pH`, `mol/L`, `1`). */
export const quantityOf = (symbol: string): Quantity | undefined => unitNamed(symbol)?.quantity

/** The units of the same kind, its own among them; just its own where there is no other. */
export const alternativesTo = (symbol: string): string[] => {
  const quantity = quantityOf(symbol)
  return quantity ? quantities[quantity].map((unit) => unit.symbol) : [symbol]
}

/**
 * A number in one unit, said in another of the same kind. Throws an Error (a fault of the caller) when the kinds differ.
 * @example convert({ value: 68, from: '°F', to: '°C' }) // 20
 */
export const convert = ({ value, from, to }: { value: number; from: string; to: string }): number => {
  if (from === to) return value
  const source = unitNamed(from)
  const target = unitNamed(to)
  if (!source || !target || source.quantity !== target.quantity) throw new Error(`${from} cannot be said in ${to}`)
  const inBase = (value - (source.unit.zero ?? 0)) * source.unit.factor
  return inBase / target.unit.factor + (target.unit.zero ?? 0)
}

/** What a laboratory reads in; each choice settles the compound units that hang on it. */
export interface LabUnits {
  temperature: '°C' | '°F'
  length: 'm' | 'ft'
  volume: 'L' | 'US gal' | 'UK gal'
  mass: 'g' | 'oz'
}

/**
 * The unit in which such a laboratory shows a number that is reckoned in `symbol`. Strengths, coatings and rates by area stay metric:
 * printed tables of the trade mix gallons and ounces in ways that cannot be told apart afterwards. So do millilitres and
 * millimetres, which are read off graduated glass and film gauges.
 */
export const shownIn = (lab: LabUnits, symbol: string): string => {
  switch (symbol) {
    case '°C':
      return lab.temperature
    case 'K':
      return lab.temperature === '°F' ? 'F°' : symbol
    case 'L':
      return lab.volume
    case 'L/min':
      return lab.volume === 'L' ? symbol : `${lab.volume}/min`
    case 'g':
      return lab.mass
    case 'kg':
      return lab.mass === 'oz' ? 'lb' : symbol
    case 'm':
      return lab.length
    case 'm/min':
      return lab.length === 'ft' ? 'ft/min' : symbol
    case 'mL/m':
      return lab.length === 'ft' ? 'mL/ft' : symbol
    case 'g/m':
      return lab.length === 'ft' ? 'g/ft' : symbol
    default:
      return symbol
  }
}
