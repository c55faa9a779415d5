import * as z from 'zod/mini'
import { machineId } from '../plan/ids.ts'
import { spliceSeconds, type SpliceWindow } from './splice.ts'
import type { Clocks } from './timer.ts'

/** A tail that is held, as plain data that outlives the page. */
export const spliceHeld = z.strictObject({
  v: z.literal(1),
  machine: machineId,
  reserveMetres: z.number().check(z.minimum(0)),
  metresPerMinute: z.number().check(z.minimum(0)),
  wall: z.number(),
  mono: z.number(),
  session: z.string(),
})
export type SpliceHeld = z.infer<typeof spliceHeld>

/**
 * Seconds since the tail was held. A phone that slept counts by its wall clock, a clock that was set is caught by the other: the greater of
 * the two stands, since too little time left is safe and too much tears film. After a restart there is only the wall clock; one that now
 * shows a time before the start says nothing, and nobody knows.
 */
export const heldSeconds = (it: SpliceHeld, now: Clocks): number | undefined => {
  const byWall = (now.wall - it.wall) / 1000
  if (now.session === it.session) return Math.max((now.mono - it.mono) / 1000, byWall)
  return byWall < 0 ? undefined : byWall
}

/** The window as `spliceState` takes it, on a clock on which it began at nought; undefined where nobody knows how long it has been held. */
export const windowOf = (it: SpliceHeld, now: Clocks): { window: SpliceWindow; now: number } | undefined => {
  const seconds = heldSeconds(it, now)
  return seconds === undefined ? undefined : { window: { ...it, heldAt: 0 }, now: seconds * 1000 }
}

/** Long over: whoever opens it again wants a new one. */
const forgottenSeconds = 15 * 60

export const isForgotten = (it: SpliceHeld, now: Clocks): boolean => (heldSeconds(it, now) ?? 0) > Math.max(forgottenSeconds, 3 * Math.min(spliceSeconds(it), forgottenSeconds))

export const spliceKey = (machine: string): string => `splice:${machine}`
