import { core } from './en/core.ts'
import type { rooms } from './en/rooms.ts'

/** Every sentence that a person reads. Another language is other objects of these types. */
export type Words = typeof core & typeof rooms

/** Enough for the first screen; the rooms' words are not in it until `loadWords` has come back, and no other screen is drawn before. */
export const firstWords = core as Words

export const loadWords = async (): Promise<Words> => ({ ...core, ...(await import('./en/rooms.ts')).rooms })
