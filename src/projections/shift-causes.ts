import type { PersonId } from '../plan/ids.ts'
import type { EntryId } from '../record/ids.ts'
import type { Exception } from './exceptions.ts'
import type { Line } from './line.ts'

export interface Cause {
  id: EntryId
  text: string
  person: PersonId | null
}

/** Why a value was out, as people said it: the last cause that was noted, or the words with which the exception was closed by hand. */
export const causeOf = (exception: Exception, lines: readonly Line[]): Cause | undefined => {
  const noted = lines.findLast((line) => line.kind === 'note' && line.data.about === 'cause' && line.data.exception === exception.id && !line.withdrawnBy)
  if (noted?.kind === 'note') return { id: noted.id, text: noted.data.text, person: noted.person }
  const closed = exception.closedHow === 'byHand' ? lines.findLast(({ id }) => id === exception.closedWith) : undefined
  return closed?.kind === 'close' && closed.data.remark ? { id: closed.id, text: closed.data.remark, person: closed.person } : undefined
}

/** What was done about it besides the doses: settings and other notes that name it, holds. */
export const actionsOf = (exception: Exception, lines: readonly Line[]): EntryId[] =>
  lines.flatMap((line) => {
    if (line.withdrawnBy || (line.kind !== 'note' && line.kind !== 'hold') || line.data.exception !== exception.id) return []
    return line.kind === 'note' && line.data.about === 'cause' ? [] : [line.id]
  })
