import type { Hash } from '../record/ids.ts'
import type { Kept } from './kept.ts'
import type { ChainHead } from './store.ts'

/**
 * The rows of this device that are its chain, oldest first, found from the head backwards by their links. A cloned device may have
 * left others with the same numbers; those are evidence, not history.
 */
export const ownChain = (rows: readonly Kept[], head: Hash): Kept[] => {
  const byHash = new Map(rows.map((row) => [row.h, row]))
  const chain: Kept[] = []
  for (let row = byHash.get(head); row; row = byHash.get(row.entry.prev)) chain.push(row)
  return chain.reverse()
}

export const sameHead = (a: ChainHead | undefined, b: ChainHead | undefined): boolean => a?.dev === b?.dev && a?.seq === b?.seq && a?.h === b?.h
