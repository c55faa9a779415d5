import * as z from 'zod'
import { person, type LabPlan, type Person } from '../../plan/lab-plan.ts'
import type { Sql, Tx } from './database.ts'

/** As much of the plan in force as the server itself goes by. */
export interface PlanInForce {
  name: string
  isDemo: boolean
  people: Person[]
}

const people = z.array(person)

export const insertPlan = async (tx: Tx, gseq: number, plan: LabPlan, effectiveFrom: number): Promise<void> => {
  await tx
    .insertInto('plans')
    .values({ gseq, effective_from: effectiveFrom, name: plan.name, demo: plan.demo ? 1 : 0, people: JSON.stringify(plan.people) })
    .execute()
}

export const planInForce = async (sql: Sql, now: number): Promise<PlanInForce | undefined> => {
  const row = await sql
    .selectFrom('plans')
    .selectAll()
    .where('effective_from', '<=', now)
    .orderBy('effective_from', 'desc')
    .orderBy('gseq', 'desc')
    .limit(1)
    .executeTakeFirst()
  return row && { name: row.name, isDemo: row.demo === 1, people: people.parse(JSON.parse(row.people)) }
}

/** Whether any plan was ever kept that is not marked as invented. */
export const hasRealPlan = async (sql: Sql): Promise<boolean> =>
  (await sql.selectFrom('plans').select('gseq').where('demo', '=', 0).limit(1).executeTakeFirst()) !== undefined
