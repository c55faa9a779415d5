import type { LabPlan, Shift } from './lab-plan.ts'

export interface ShiftSpan {
  shift: Shift
  /** Date of its start in the laboratory's time zone: `2026-01-12`. */
  date: string
  /** Milliseconds since 1970, from ≤ t < to. A night with a change of the clock is an hour shorter or longer. */
  from: number
  to: number
}

const at = (date: Temporal.PlainDate, wallTime: string, timeZone: string): number =>
  date.toZonedDateTime({ timeZone, plainTime: Temporal.PlainTime.from(wallTime) }).epochMilliseconds

/** A shift that begins on a date of the laboratory's calendar; one that ends at or before its start crosses midnight. */
export const shiftOn = (plan: LabPlan, shift: Shift, date: string): ShiftSpan => {
  const day = Temporal.PlainDate.from(date)
  const endDay = shift.to <= shift.from ? day.add({ days: 1 }) : day
  return { shift, date, from: at(day, shift.from, plan.timeZone), to: at(endDay, shift.to, plan.timeZone) }
}

/**
 * The shift that holds an instant. Where shifts leave a gap, the one that began last goes on until the next begins; where they overlap, the one that
 * began last is on.
 */
export const shiftAt = (plan: LabPlan, time: number): ShiftSpan => {
  const today = Temporal.Instant.fromEpochMilliseconds(time).toZonedDateTimeISO(plan.timeZone).toPlainDate()
  const spansOf = (days: number): ShiftSpan[] => plan.shifts.map((shift) => shiftOn(plan, shift, today.add({ days }).toString()))
  const begun = [...spansOf(-1), ...spansOf(0)].sort((a, b) => a.from - b.from)
  const index = begun.findLastIndex(({ from }) => from <= time)
  const found = begun[index]!
  if (time < found.to) return found
  const next = begun[index + 1] ?? spansOf(1).sort((a, b) => a.from - b.from)[0]!
  return { ...found, to: next.from }
}
