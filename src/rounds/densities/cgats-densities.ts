import type { CgatsTable } from './cgats-read.ts'
import { cellOf, type DensityRow } from './row.ts'

/** Density fields, the one that serves black-and-white film first. */
const densityFields = ['D_VIS', 'D_MAJOR_FILTER', 'D_GREEN', 'D_RED', 'D_BLUE'] as const

export type DensityField = (typeof densityFields)[number]

/** Fields of a table that hold densities. */
export const fieldsOfDensity = ({ fields }: CgatsTable): DensityField[] => densityFields.filter((field) => fields.includes(field))

/** The densities of one table in one of its fields. Empty where it has no such field. */
export const densitiesOf = (table: CgatsTable, field: DensityField, how?: { decimalComma?: boolean }): DensityRow[] => {
  const at = table.fields.indexOf(field)
  if (at < 0) return []
  const names = ['SAMPLE_NAME', 'SAMPLE_ID'].map((name) => table.fields.indexOf(name)).filter((index) => index >= 0)
  return table.sets.map((set) => ({ names: names.map((index) => set[index]!.text), cell: cellOf(set[at]!.text, how), line: set[at]!.line }))
}
