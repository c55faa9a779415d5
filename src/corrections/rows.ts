import type { Row } from './row.ts'
import { fixingPhHigh } from './rows/fixing.ts'

/** The trade's table of faults and remedies. */
export const rows: readonly Row[] = [fixingPhHigh]
