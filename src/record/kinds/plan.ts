import * as z from 'zod/mini'
import { labPlan } from '../../plan/lab-plan.ts'

/** A revision of the lab plan, in force from its instant on (milliseconds since 1970). */
export const plan = z.strictObject({ plan: labPlan, effectiveFrom: z.number(), why: z.optional(z.string().check(z.maxLength(500))) })
export type PlanRevision = z.infer<typeof plan>
