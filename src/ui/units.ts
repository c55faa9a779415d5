import type { DisplayUnits } from '../plan/lab-plan.ts'
import { metresPerFoot } from '../science/foot.ts'
import { decimalsOf, numberText } from './format.ts'

export const lengthIn = (metres: number, unit: DisplayUnits['length']): number => (unit === 'ft' ? metres / metresPerFoot : metres)
export const metresOf = (length: number, unit: DisplayUnits['length']): number => (unit === 'ft' ? length * metresPerFoot : length)

/** `30.5 m/min`, `100 ft/min`: a decimal only where it says something. */
export const speedText = (metresPerMinute: number, unit: DisplayUnits['length']): string => `${shortText(lengthIn(metresPerMinute, unit), 1)} ${unit}/min`

/** Film in whole metres or feet, thousands apart by a thin space as printed tables have it. */
export const filmText = (metres: number, unit: DisplayUnits['length']): string => `${groupedText(Math.round(lengthIn(metres, unit)))} ${unit}`

/** At most so many decimals, without noughts at the end. */
export const shortText = (value: number, decimals: number): string => {
  const rounded = Number(value.toFixed(decimals))
  return numberText(rounded, decimalsOf(rounded))
}

export const groupedText = (whole: number): string => String(whole).replace(/\B(?=(\d{3})+$)/g, '\u2009')
