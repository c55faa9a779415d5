/** The only place, besides the two main files, that looks at a clock. */
export interface Clock {
  /** Wall clock, ms since 1970. It may be wrong, and it may jump. */
  wall(): number
  /** Whole ms since this page began; never backwards, but it may stand still while the phone sleeps. */
  monotonic(): number
  /** The zone the phone is set to, and its offset from UTC in minutes, at an instant. */
  zone(): string
  offsetMinutes(instant: number): number
  /** Random for each life of a page: within one, `monotonic` can be compared. */
  readonly session: string
}

const hex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')

export const createClock = (): Clock => {
  const session = hex(crypto.getRandomValues(new Uint8Array(4)))
  return {
    wall: () => Date.now(),
    monotonic: () => Math.floor(performance.now()),
    zone: () => Intl.DateTimeFormat().resolvedOptions().timeZone,
    offsetMinutes: (instant) => -new Date(instant).getTimezoneOffset(),
    session,
  }
}

/** `2026-01-12T06:40:00.000+01:00`: the wall clock as it hangs on the wall, with its offset. */
export const instantWithOffset = (instant: number, offsetMinutes: number): string => {
  const local = new Date(instant + offsetMinutes * 60_000).toISOString().slice(0, -1)
  const size = Math.abs(offsetMinutes)
  const two = (value: number): string => String(Math.floor(value)).padStart(2, '0')
  return `${local}${offsetMinutes < 0 ? '-' : '+'}${two(size / 60)}:${two(size % 60)}`
}

export const clockText = (clock: Clock, instant: number = clock.wall()): string => instantWithOffset(instant, clock.offsetMinutes(instant))
