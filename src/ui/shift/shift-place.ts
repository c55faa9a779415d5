import type { LabPlan } from '../../plan/lab-plan.ts'
import { shiftAt, shiftOn, type ShiftSpan } from '../../plan/shift-time.ts'
import type { Lab } from '../../projections/lab.ts'

/** A shift's page has an address of its own, which its print carries: `/shift/2026-01-12/early`. */
export const shiftPath = ({ date, shift }: ShiftSpan): string => `/shift/${date}/${shift.id}`

/** The shift before another and the one after it, each by the plan that was in force there: a revision may have changed the hours meanwhile. */
export const shiftBefore = (lab: Lab, inForce: LabPlan, { from }: Pick<ShiftSpan, 'from'>): ShiftSpan => shiftAt(lab.plan(from - 1)?.plan ?? inForce, from - 1)
export const shiftAfter = (lab: Lab, inForce: LabPlan, { to }: Pick<ShiftSpan, 'to'>): ShiftSpan => shiftAt(lab.plan(to)?.plan ?? inForce, to)

/** The shift at an address, by the plan that was in force when it began; undefined where there was no such shift. */
export const shiftNamed = (lab: Lab, inForce: LabPlan, [date, id]: readonly string[], now: number): ShiftSpan | undefined => {
  if (date === undefined || id === undefined) return shiftAt(inForce, now)
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return undefined
  const startIn = (plan: LabPlan): number | undefined => {
    const shift = plan.shifts.find((it) => it.id === id)
    try {
      return shift && shiftOn(plan, shift, date).from
    } catch {
      // A day that the calendar does not have.
      return undefined
    }
  }
  const roughly = startIn(inForce) ?? startIn(lab.plan(Date.parse(`${date}T12:00:00Z`))?.plan ?? inForce)
  const then = roughly === undefined ? undefined : (lab.plan(roughly)?.plan ?? inForce)
  const from = then && startIn(then)
  return then && from !== undefined ? shiftAt(then, from) : undefined
}
