/** Chance out of a seed, so that a run can be had again: xorshift32 (G. Marsaglia, "Xorshift RNGs", 2003). */
export class Random {
  #state: number
  constructor(seed: number) {
    this.#state = (seed * 2_654_435_761) >>> 0 || 1
    for (let warm = 0; warm < 8; warm++) this.#next()
  }

  #next(): number {
    let it = this.#state
    it ^= it << 13
    it ^= it >>> 17
    it ^= it << 5
    return (this.#state = it >>> 0)
  }

  /** 0 ≤ number < 1. */
  chance(): number {
    return this.#next() / 2 ** 32
  }

  below(end: number): number {
    return Math.floor(this.chance() * end)
  }

  between(first: number, last: number): number {
    return first + this.below(last - first + 1)
  }

  of<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!
  }

  /** One of the names, each as often as its weight says. */
  weighted<T extends string>(weights: Readonly<Record<T, number>>): T {
    const all = Object.entries(weights) as [T, number][]
    let left = this.chance() * all.reduce((sum, [, weight]) => sum + weight, 0)
    for (const [name, weight] of all) if ((left -= weight) < 0) return name
    return all.at(-1)![0]
  }

  bytes = (count: number): Uint8Array<ArrayBuffer> => Uint8Array.from({ length: count }, () => this.below(256))
}
