/** At the end of the log, checkpoints are at least this many lines apart, and more where the state is large: writing it must not cost more than folding. */
const leastSpacing = 128
const bytesPerLine = 256

interface Checkpoint {
  lines: number
  state: string
}

/**
 * Folds kept as JSON, so that what arrives late is folded anew from shortly before it and not from the beginning. Their number grows with the
 * logarithm of the log: close together at its end, where late entries belong, far apart in the past.
 */
export class Checkpoints {
  #kept: Checkpoint[]

  constructor(first: string) {
    this.#kept = [{ lines: 0, state: first }]
  }

  /** The last one that is not after this many lines. */
  before(lines: number): Checkpoint {
    return this.#kept.findLast((it) => it.lines <= lines)!
  }

  forgetAfter(lines: number): void {
    while (this.#kept.at(-1)!.lines > lines) this.#kept.pop()
  }

  /** Whether one is worth keeping after `lines` of a log of `total`: not nearer to the one before than half of what is still to come. */
  isWanted(lines: number, total: number): boolean {
    const last = this.#kept.at(-1)!
    return lines - last.lines >= Math.max(leastSpacing, last.state.length / bytesPerLine, (total - lines) / 2)
  }

  keep(lines: number, state: string): void {
    this.#kept.push({ lines, state })
    for (let index = this.#kept.length - 2; index > 0; index--) {
      const before = this.#kept[index - 1]!.lines
      const after = this.#kept[index + 1]!.lines
      if (after - before <= lines - after) this.#kept.splice(index, 1)
    }
  }

  get count(): number {
    return this.#kept.length
  }
}
