import type * as z from 'zod/mini'
import type { labPlan } from './lab-plan.ts'

/** A lab plan as it is written down or while it is edited: ids are plain words, and nothing has been checked. */
export type WrittenPlan = z.input<typeof labPlan>
export type WrittenMachine = WrittenPlan['machines'][number]
export type WrittenStation = WrittenMachine['stations'][number]
export type WrittenCheck = WrittenPlan['checks'][number]
