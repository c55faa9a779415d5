import type { Sql } from '../database/database.ts'
import { readPerson } from '../database/people.ts'
import type { PlanInForce } from '../database/plans.ts'

/**
 * Who is a supervisor: one whom the plan in force calls so, or who has a passphrase here and whom the plan does not call an operator. The
 * second half lets the first supervisor in before there is a plan, and keeps a plan that forgot everybody from locking the laboratory out.
 */
export const actsAsSupervisor = async (sql: Sql, plan: PlanInForce | undefined, person: string | null): Promise<boolean> => {
  if (person === null) return false
  const role = plan?.people.find(({ id }) => id === person)?.role
  if (role) return role === 'supervisor'
  return (await readPerson(sql, person)) !== undefined
}

/** The same with a passphrase, which is needed to be believed. */
export const isKnownSupervisor = async (sql: Sql, plan: PlanInForce | undefined, person: string): Promise<boolean> =>
  (await readPerson(sql, person)) !== undefined && (await actsAsSupervisor(sql, plan, person))
