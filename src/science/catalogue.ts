import type { AnyCalculation } from './calculation.ts'
import { waterDensity } from './water/density.ts'

/** Every calculation of the product, in the order in which Bench and `calc list` show them. */
export const catalogue: readonly AnyCalculation[] = [waterDensity]

export const calculationById = (id: string): AnyCalculation | undefined => catalogue.find((it) => it.id === id)
