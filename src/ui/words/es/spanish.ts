import { core } from '../en/core.ts'
import { rooms } from '../en/rooms.ts'
import { translatedWords } from '../translation.ts'
import type { Words } from '../words.ts'
import { translation } from './translation.ts'

/** What Spanish does not have yet is said in English. */
export const spanish: Words = translatedWords({ ...core, ...rooms } as Words, translation)
