/** What a page knows of time. */
export interface PageClocks {
  /** The laboratory's time: it jumps where the phone's clock is set. */
  now(): number
  /** Milliseconds on a clock that never runs backwards, but may stand still while the phone sleeps. */
  mono(): number
  /** How often the page was out of sight since it began: in sight, a phone does not sleep. */
  naps(): number
}

interface Anchor {
  left: number
  mono: number
  naps: number
}

const mostKept = 100

/**
 * How long baths still mix, by the clock that cannot be set, from when this page first saw the end. Out of sight the phone may have slept, and that clock
 * stood still: then the laboratory's time is asked as well, and the shorter counts, since the standing clock can only say too much.
 *
 * Not told apart: a clock that was set forwards while the page was out of sight, from sleep.
 */
export class MixingClock {
  readonly #anchors = new Map<number, Anchor>()

  constructor(readonly clocks: PageClocks) {}

  /** Milliseconds until an end; none or fewer where it has passed. */
  left(until: number): number {
    const { now, mono, naps } = this.clocks
    const known = this.#anchors.get(until)
    const byWall = until - now()
    if (!known) {
      this.#keep(until, byWall)
      return byWall
    }
    const byMono = known.left - (mono() - known.mono)
    if (naps() === known.naps) return byMono
    const left = Math.min(byMono, byWall)
    this.#keep(until, left)
    return left
  }

  #keep(until: number, left: number): void {
    this.#anchors.delete(until)
    this.#anchors.set(until, { left, mono: this.clocks.mono(), naps: this.clocks.naps() })
    const [oldest] = this.#anchors.keys()
    if (this.#anchors.size > mostKept && oldest !== undefined) this.#anchors.delete(oldest)
  }
}
