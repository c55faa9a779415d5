import type { Machine } from '../plan/machine.ts'
import { filmSplice } from '../science/film/splice.ts'
import { resultOf } from '../science/evaluate.ts'

/** The window of a splice: the elevator feeds the machine while the tail is held. */
export interface SpliceWindow {
  /** Length of film stored in the elevator. */
  reserveMetres: number
  metresPerMinute: number
  /** When the tail was held, on a clock that never runs backwards, in ms. */
  heldAt: number
}

/** How long a splice may take: reserve ÷ speed. Infinite at a standstill. */
export const spliceSeconds = ({ reserveMetres, metresPerMinute }: Pick<SpliceWindow, 'reserveMetres' | 'metresPerMinute'>): number => {
  if (metresPerMinute <= 0) return Number.POSITIVE_INFINITY
  return reserveMetres <= 0 ? 0 : resultOf(filmSplice, { storedMetres: reserveMetres, metresPerMinute }).seconds
}

/** Seconds until the elevator is empty; below nought it is too late. Nothing runs out at a standstill. */
export const secondsLeft = (window: SpliceWindow, now: number): number => spliceSeconds(window) - (now - window.heldAt) / 1000

/** A clip join took under ten seconds in the practice of 1927 (a trade magazine, November 1927); with less than that left none is begun. */
const lastJoinSeconds = 10
/** A third of the window gone by without the join in the rack: hurry. Common practice, no source. */
const hurryShare = 1 / 3

export type SpliceState = 'ample' | 'hurry' | 'lastSeconds' | 'empty'

export const spliceState = (window: SpliceWindow, now: number): SpliceState => {
  const left = secondsLeft(window, now)
  if (left <= 0) return 'empty'
  if (left <= lastJoinSeconds) return 'lastSeconds'
  return left <= spliceSeconds(window) * hurryShare ? 'hurry' : 'ample'
}

/** The window of a machine as it runs now; undefined where its plan knows no reserve. */
export const spliceWindow = (machine: Machine, metresPerMinute: number, heldAt: number): SpliceWindow | undefined =>
  machine.reserveMetres === undefined ? undefined : { reserveMetres: machine.reserveMetres, metresPerMinute, heldAt }
