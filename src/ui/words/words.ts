import { core } from './en/core.ts'
import type { rooms } from './en/rooms.ts'
import type { Language } from './language.ts'

/** Every sentence that a person reads. Another language is a folder beside `en`, a file for each of these. */
export type Words = typeof core & typeof rooms

/** Enough for the screens before all others; the rooms' words are not in it until `loadWords` has come back, and no other screen is drawn before. */
export const firstWords = core as Words

export const loadWords = async (language: Language): Promise<Words> =>
  language === 'es' ? (await import('./es/spanish.ts')).spanish : { ...core, ...(await import('./en/rooms.ts')).rooms }
