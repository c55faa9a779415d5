import type { MachineState } from '../plan/schedule.ts'
import type { RunSpan } from './machines.ts'

/** A time without a break in which a check applied: from ≤ t < to. `to` is infinite while it still does. */
export interface Stretch {
  from: number
  to: number
}

/** When a machine was in one of some states, not before `since`. Before anybody spoke of it, it stood still. */
export const stretchesOf = (spans: readonly RunSpan[], states: readonly MachineState[], since: number): Stretch[] => {
  const all: RunSpan[] = [{ from: Number.NEGATIVE_INFINITY, state: 'stopped', metresPerMinute: 0 }, ...spans]
  const stretches: Stretch[] = []
  all.forEach((span, index) => {
    if (!states.includes(span.state)) return
    const from = Math.max(span.from, since)
    const to = all[index + 1]?.from ?? Number.POSITIVE_INFINITY
    if (to <= from) return
    const last = stretches.at(-1)
    if (last && last.to === span.from) last.to = to
    else stretches.push({ from, to })
  })
  return stretches
}
