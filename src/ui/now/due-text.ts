import type { Due } from '../../projections/due.ts'
import type { Words } from '../words/words.ts'

/** `due in 4 min`, `due now`, `12 min late`. */
export const dueText = (due: Due, now: number, words: Words): string => {
  if (due.status === 'ahead') return words.now.dueIn(words.time.span(due.dueAt - now))
  return due.status === 'late' ? words.now.late(words.time.span(now - due.dueAt)) : words.now.dueNow
}
