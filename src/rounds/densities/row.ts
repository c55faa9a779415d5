import { below, above } from '../../science/decimal.ts'

/** One density of a text from outside. `missing`: the text says that there is none, which is not nought. */
export type DensityCell =
  | { kind: 'density'; value: number; keyed: string }
  | { kind: 'missing' }
  /** `0,37`: neither 0 nor 37 is taken; somebody must say that it is 0.37. */
  | { kind: 'decimalComma'; text: string; as: string }
  | { kind: 'notADensity'; text: string }

export interface DensityRow {
  /** Names under which the row may be known: id and name of the sample. */
  names: string[]
  cell: DensityCell
  line: number
}

/** Beyond these no densitometer reads. */
const range = { low: -0.1, high: 6 }

export const cellOf = (text: string, { decimalComma = false } = {}): DensityCell => {
  const plain = text.trim().replace(/^−/, '-')
  if (/^(n\/?a|nan|-+|–|—|\*+|none|missing)?$/i.test(plain)) return { kind: 'missing' }
  if (/^-?\d*,\d+$/.test(plain)) {
    const as = plain.replace(',', '.').replace(/^(-?)\./, '$10.')
    return decimalComma ? numberCell(as, text) : { kind: 'decimalComma', text, as }
  }
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(plain) ? numberCell(plain.replace(/^(-?)\./, '$10.').replace(/\.$/, ''), text) : { kind: 'notADensity', text }
}

const numberCell = (keyed: string, text: string): DensityCell => {
  const value = Number(keyed)
  return below(value, range.low) || above(value, range.high) ? { kind: 'notADensity', text } : { kind: 'density', value, keyed }
}
