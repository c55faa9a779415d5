import type { LabPlan } from '../plan/lab-plan.ts'
import { withFormer } from '../plan/with-former.ts'
import type { Plans } from './plans.ts'

/** A plan for reading what was ever said: with whatever other revisions had that it has not. */
export const readingPlan = ({ revisions }: Plans, plan: LabPlan): LabPlan => withFormer(plan, revisions.map((it) => it.plan).reverse())
