import { isDoubted } from './doubt.ts'
import type { Kept } from './kept.ts'
import type { ChainHead } from './store.ts'

/**
 * What an entry from the server does to the row that is here. An entry once kept is never replaced: only the server's number,
 * time and judgement are added. An own entry that this phone has lost (its database went back) is taken up into the chain again
 * when it follows on the head: signed with this phone's key and linked to its head, it is this phone's own.
 */
export const mergePulled = (
  here: Kept | undefined,
  pulled: Kept,
  head: ChainHead | undefined,
): { row: Kept; head?: ChainHead } | undefined => {
  if (!here) {
    const { dev, seq, prev } = pulled.entry
    const follows = !isDoubted(pulled) && head !== undefined && dev === head.dev && seq === head.seq + 1 && prev === head.h
    return follows ? { row: pulled, head: { dev, seq, h: pulled.h } } : { row: pulled }
  }
  // One id and two contents: what was kept first stays, and nothing of the second is taken over.
  if (here.h !== pulled.h) return undefined
  if (sameWord(here, pulled)) return undefined
  return { row: { ...pulled, entry: here.entry, time: here.time } as Kept }
}

const sameWord = (a: Kept, b: Kept): boolean =>
  a.epoch === b.epoch && a.gseq === b.gseq && a.recvAt === b.recvAt && a.status === b.status && a.why === b.why


/** An entry that the server keeps apart as of a second history of its device; undefined where it has counted it after all. */
export const setApart = (here: Kept | undefined, epoch: string): Kept | undefined =>
  !here || here.status === 'quarantined' || (here.epoch === epoch && here.recvAt !== undefined) ? undefined : { ...here, status: 'quarantined', why: 'fork' }

/**
 * Rows that bear the number of a pulled entry and are another: the device wrote two histories, and a server that was put back has taken the
 * other one. This phone's own are left to its outbox, which finds that out.
 */
export const displacedBy = (pulled: Kept, sameNumber: readonly Kept[], head: ChainHead | undefined): Kept[] =>
  pulled.entry.dev === head?.dev || isDoubted(pulled)
    ? []
    : sameNumber.flatMap((row) => (row.entry.id === pulled.entry.id ? [] : (setApart(row, pulled.epoch ?? '') ?? [])))
