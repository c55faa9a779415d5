import { useMemo } from 'preact/hooks'
import type { Machine } from '../../plan/machine.ts'
import { dueAtMachine, type Due } from '../../projections/due.ts'
import { useApp } from '../app-context.ts'

/** Working out what is due asks the calendar; that often is often enough. */
export const everyMilliseconds = 5_000

/** What is due or falls due next at a machine, worked out anew when something came in or some seconds have gone. */
export const useDue = (machine: Machine): Due[] => {
  const { lab, plan, now } = useApp()
  const tick = Math.floor(now.value / everyMilliseconds)
  return useMemo(() => (plan.value ? dueAtMachine(lab.value.state, plan.value.plan, machine, now.value) : []), [lab.value, plan.value, machine, tick])
}
