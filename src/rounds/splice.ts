/** The window of a splice: the elevator feeds the machine while the tail is held. */
export interface SpliceWindow {
  /** Length of film stored in the elevator. */
  reserveMetres: number
  metresPerMinute: number
  /** When the tail was held, on a clock that never runs backwards, in ms. */
  heldAt: number
}

/** Seconds until the elevator is empty, reserve ÷ speed; below nought it is too late. Nothing runs out at a standstill. */
export const secondsLeft = ({ reserveMetres, metresPerMinute, heldAt }: SpliceWindow, now: number): number =>
  metresPerMinute > 0 ? (reserveMetres / metresPerMinute) * 60 - (now - heldAt) / 1000 : Number.POSITIVE_INFINITY
