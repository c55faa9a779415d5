import type { Check } from '../plan/check.ts'
import { checksOfMachine } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Machine } from '../plan/machine.ts'

/** What has to be proven right before anybody handles acid. */
export type Guard = NonNullable<Check['safeguard']>

/** The checks that guard a machine: its own, or, where it has none, those anywhere in the laboratory. */
export const guardChecks = (plan: LabPlan, machine: Machine, guard: Guard): Check[] => {
  const own = checksOfMachine(plan, machine).filter(({ safeguard }) => safeguard === guard)
  return own.length ? own : plan.checks.filter(({ safeguard }) => safeguard === guard)
}
