import * as z from 'zod'
import { labPlan } from '../plan/lab-plan.ts'

/**
 * The lab plan's file as JSON Schema, made from the schema that reads it. What it cannot say (ids that name something, limits in order, a time
 * zone that exists, one supervisor at least) is checked when a plan is taken in, and named there.
 */
export const planSchema = (): Record<string, unknown> => ({
  $id: 'urn:bathkeeper:lab-plan:1',
  title: 'Lab plan of Bathkeeper, version 1',
  description: 'Machines, stations, checks, materials, methods, formulas, people and shifts of one laboratory. Beyond this schema a plan must have ids that name something, limits in order, a known time zone and at least one supervisor.',
  ...z.toJSONSchema(labPlan, { io: 'input', target: 'draft-2020-12' }),
})
