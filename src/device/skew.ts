import * as z from 'zod/mini'
import type { Clock } from './clock.ts'

/** Server minus device, in ms, as measured at an exchange; `within` is half the round trip. */
const measured = z.strictObject({ ms: z.int(), within: z.int(), at: z.number() })
export type MeasuredSkew = z.infer<typeof measured>
export type Skew = { ms: number; within: number } | null

export const parseSkew = (raw: unknown): MeasuredSkew | undefined => measured.safeParse(raw).data

/** Out of one exchange: the server's clock is taken to have been read half-way through the round trip. */
export const measureSkew = (given: { sentAt: number; answeredAt: number; serverTime: number }): MeasuredSkew => {
  const within = Math.max(0, Math.ceil((given.answeredAt - given.sentAt) / 2))
  return { ms: Math.round(given.serverTime - (given.sentAt + given.answeredAt) / 2), within, at: given.answeredAt }
}

const goodForMs = 600_000

/** The better known of two: the one with the shorter round trip, unless it is old, or the two cannot both be right (a clock was set). */
export const betterSkew = (before: MeasuredSkew | undefined, next: MeasuredSkew): MeasuredSkew => {
  if (!before) return next
  const age = next.at - before.at
  const agree = Math.abs(before.ms - next.ms) <= before.within + next.within + 1
  return agree && age >= 0 && age < goodForMs && before.within <= next.within ? before : next
}

/** A wall clock that now stands before the measurement has been set back since: the error is then no longer known. */
const setBackMs = 2_000

/**
 * The clock error to write on an entry. A step forwards cannot be told from a sleep, as the monotonic clock stands still in some
 * phones while they sleep, so it is left to the next exchange; entry and server time together still show it.
 */
export const skewNow = (clock: Clock, known: MeasuredSkew | undefined): Skew =>
  known === undefined || clock.wall() < known.at - setBackMs ? null : { ms: known.ms, within: known.within }
