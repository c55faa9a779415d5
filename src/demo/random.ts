import type { EntryId } from '../record/ids.ts'

/** Chance from a seed: the same seed gives the same history everywhere. */
export interface Random {
  /** 0 ≤ u < 1. */
  unit(): number
  /** Normal with mean 0 and standard deviation 1, cut at three. */
  normal(): number
  pick<T>(list: readonly T[]): T
  /** An id as phones make them, for an instant. */
  id(time: number): EntryId
}

/** Mulberry32 (T. Ettinger, public domain): 32 bits of state are plenty for a few thousand invented readings. */
export const randomFrom = (seed: number): Random => {
  let state = seed >>> 0
  const bits = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed
    return (mixed ^ (mixed >>> 14)) >>> 0
  }
  const unit = (): number => bits() / 2 ** 32
  const hex = (digits: number): string => bits().toString(16).padStart(8, '0').slice(0, digits)
  return {
    unit,
    normal: () => {
      const distance = Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit())
      return Math.max(-3, Math.min(3, distance))
    },
    pick: (list) => list[Math.floor(unit() * list.length)]!,
    id: (time) => {
      const at = Math.floor(time).toString(16).padStart(12, '0')
      return `${at.slice(0, 8)}-${at.slice(8)}-7${hex(3)}-${'89ab'[bits() % 4]}${hex(3)}-${hex(6)}${hex(6)}` as EntryId
    },
  }
}
