import type { LabPlan } from '../plan/lab-plan.ts'
import { replenisherId } from '../plan/material.ts'
import type { Words } from './words/words.ts'

/** What was poured, as a person calls it: water and replenisher stand for themselves. */
export const materialName = (plan: LabPlan, id: string, { shift }: Words): string =>
  id === 'water' ? shift.adds.water : id === replenisherId ? shift.adds.replenisher : (plan.materials.find((it) => it.id === id)?.name ?? id)
