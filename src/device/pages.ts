import type { Cursor, Page } from './store.ts'

const samePlace = (a: Cursor, b: Cursor | undefined): boolean => a.epoch === b?.epoch && a.after === b.after && a.sh === b.sh

/** The page follows on what was taken in so far. */
export const isAt = ({ from }: Page, cursor: Cursor | undefined): boolean => samePlace(from, cursor)

/** This very page is the last that was taken in. */
export const isPast = ({ from, next }: Page, cursor: Cursor | undefined): boolean => next.after > from.after && samePlace(next, cursor)
