import type { SheetStep } from '../../corrections/mixing-sheet.ts'
import type { Formula } from '../../plan/formula.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { substances } from '../../science/substances-table.ts'

/** What stands on the drum: the material of the plan where the formula names one, else substance and crystal. */
export const stepName = ({ substance, form }: Pick<SheetStep, 'substance' | 'form'>, formula: Formula, plan: LabPlan): string => {
  const material = formula.steps.find((it) => it.substance === substance && it.material)?.material
  const named = material && plan.materials.find(({ id }) => id === material)?.name
  if (named) return named
  const { name } = substances[substance]
  return form && form !== 'anhydrous' ? `${name}, ${form}` : name
}
