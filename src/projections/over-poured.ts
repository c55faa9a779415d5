import type { Add } from '../record/kinds/add.ts'

/** A measuring jug is read to a few per cent; what differs by more was meant, or was a slip. Common practice, no source. */
export const jugReads = 0.05

const thousands: Readonly<Record<Add['poured']['unit'], number>> = { mL: 1, L: 1000, g: 1, kg: 1000 }
const inSmall = ({ amount, unit }: Pick<Add['poured'], 'amount' | 'unit'>): number => amount * thousands[unit]

/** More went in than was worked out: it is in the log as it was, is read twice, and a supervisor takes note of it. */
export const isOverPoured = ({ planned, poured }: Pick<Add, 'planned' | 'poured'>): boolean => planned !== undefined && inSmall(poured) > inSmall(planned) * (1 + jugReads)
