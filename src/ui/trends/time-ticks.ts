import { tagOf } from '../format.ts'

interface Step {
  days?: number
  hours?: number
  minutes?: number
  months?: number
  years?: number
}

const hour = 3_600_000
/** What a step is called in milliseconds, roughly: only to choose by. */
const steps: readonly (readonly [milliseconds: number, step: Step])[] = [
  [hour / 12, { minutes: 5 }], [hour / 4, { minutes: 15 }], [hour / 2, { minutes: 30 }], [hour, { hours: 1 }], [2 * hour, { hours: 2 }], [4 * hour, { hours: 4 }], [8 * hour, { hours: 8 }],
  [24 * hour, { days: 1 }], [48 * hour, { days: 2 }], [168 * hour, { days: 7 }], [336 * hour, { days: 14 }], [730 * hour, { months: 1 }], [2190 * hour, { months: 3 }], [8760 * hour, { years: 1 }],
]

export interface Tick {
  at: number
  text: string
}

/**
 * Round times of the laboratory's own calendar, at most so many: midnight is midnight in its time zone, on the days when the clock changes too.
 */
export const timeTicks = ({ from, to, timeZone, language, most }: { from: number; to: number; timeZone: string; language: string; most: number }): Tick[] => {
  const [, step] = steps.find(([milliseconds]) => (to - from) / milliseconds <= most) ?? steps.at(-1)!
  const begin = Temporal.Instant.fromEpochMilliseconds(Math.floor(from)).toZonedDateTimeISO(timeZone).toPlainDateTime().with({ hour: 0, minute: 0, second: 0, millisecond: 0 })
  const start = step.years || step.months ? begin.with({ month: 1, day: 1 }) : step.days && step.days > 2 ? begin.with({ day: 1 }) : begin
  const form = new Intl.DateTimeFormat(tagOf(language), {
    timeZone, ...(step.years ? { year: 'numeric' } : step.months ? { month: 'short', year: '2-digit' } : step.days ? { day: 'numeric', month: 'short' } : { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }),
  })
  const dayForm = new Intl.DateTimeFormat(tagOf(language), { timeZone, day: 'numeric', month: 'short' })
  const ticks: Tick[] = []
  // Steps of the clock on the wall, so that its hours stay round where it is put forward or back.
  for (let wall = start; ; wall = wall.add(step)) {
    const at = wall.toZonedDateTime(timeZone).epochMilliseconds
    if (at > to) return ticks
    const isMidnight = (step.hours || step.minutes) && wall.hour === 0 && wall.minute === 0
    if (at >= from) ticks.push({ at, text: isMidnight ? dayForm.format(at) : form.format(at) })
  }
}
