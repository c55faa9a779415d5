import type { Kept } from './kept.ts'

const doubts = ['unknownDevice', 'hash', 'signature'] as const

/** What this phone itself found wrong with the seal of an entry that the server gave it. */
export type Doubt = (typeof doubts)[number]

/** Whether the device did not say it, as far as this phone can tell; what the server thinks of an entry is another matter. */
export const isDoubted = ({ status, why }: Kept): boolean => status === 'quarantined' && (doubts as readonly (string | undefined)[]).includes(why)
