import * as z from 'zod/mini'

/** The two clocks of a phone at one instant. `session` names the life of the page within which `mono` can be compared. */
export interface Clocks {
  /** Wall clock, ms since 1970. It may be wrong, and it may be set. */
  wall: number
  /** Milliseconds on a clock that never runs backwards, of this session. */
  mono: number
  session: string
}

/** A settling or mixing time under way, as plain data that outlives the page. */
export const timer = z.strictObject({
  seconds: z.number().check(z.minimum(0)),
  wall: z.number(),
  mono: z.number(),
  session: z.string(),
})
export type Timer = z.infer<typeof timer>

export const startTimer = (seconds: number, { wall, mono, session }: Clocks): Timer => ({ seconds, wall, mono, session })

/**
 * Seconds still to wait, from 0 up. Within one life of the page by the clock that cannot be set; after a restart by the wall clock, as there is no
 * other. A wall clock that was set back behind the start says nothing, so the whole time is waited for again: too long is safe, too short is not.
 *
 * @example secondsToWait(startTimer(90, clocks), { ...clocks, mono: clocks.mono + 30_000 }) // 60
 */
export const secondsToWait = (it: Timer, now: Clocks): number => Math.max(0, it.seconds - elapsedSeconds(it, now))

export const hasRung = (it: Timer, now: Clocks): boolean => secondsToWait(it, now) === 0

const elapsedSeconds = (it: Timer, now: Clocks): number => {
  if (now.session === it.session) return (now.mono - it.mono) / 1000
  return now.wall < it.wall ? 0 : (now.wall - it.wall) / 1000
}
