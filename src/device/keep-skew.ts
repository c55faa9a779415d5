import type { ShelfStore } from './store.ts'
import { betterSkew, measureSkew, parseSkew } from './skew.ts'

/** Keeps the clock error as measured at each answer of the server that tells its time; the next entry carries it. */
export const keepSkew = async (store: ShelfStore, measured: { sentAt: number; answeredAt: number; serverTime: number }): Promise<void> => {
  const next = measureSkew(measured)
  const before = parseSkew(await store.take('singles', 'skew'))
  if (betterSkew(before, next) === before) return
  await store.revise('singles', 'skew', (raw) => betterSkew(parseSkew(raw), next))
}
