/** Numbers that look random and are the same for the same seed on every machine (mulberry32, public domain, T. Ettinger). */
export interface Random {
  /** From 0 up to, but not, 1. */
  unit(): number
  between(low: number, high: number): number
  /** Whole number, both ends included. */
  whole(low: number, high: number): number
  chance(probability: number): boolean
  pick<T>(items: readonly T[]): T
}

export const seededRandom = (seed: number): Random => {
  let state = (Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ (seed >>> 7)) >>> 0
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const between = (low: number, high: number): number => low + (high - low) * unit()
  const whole = (low: number, high: number): number => low + Math.floor(unit() * (high - low + 1))
  return {
    unit,
    between,
    whole,
    chance: (probability) => unit() < probability,
    pick: <T>(items: readonly T[]): T => {
      if (items.length === 0) throw new Error('nothing to pick from')
      return items[whole(0, items.length - 1)] as T
    },
  }
}
