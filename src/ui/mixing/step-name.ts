import type { SheetStep } from '../../corrections/mixing-sheet.ts'
import type { Formula } from '../../plan/formula.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { Words } from '../words/words.ts'

/** What stands on the drum: the material of the plan where the formula names one, else substance and crystal. */
export const stepName = ({ substance, form }: Pick<SheetStep, 'substance' | 'form'>, formula: Formula, plan: LabPlan, { corrections }: Words): string => {
  const material = formula.steps.find((it) => it.substance === substance && it.material)?.material
  const named = material && plan.materials.find(({ id }) => id === material)?.name
  if (named) return named
  const name = corrections.substance(substance) ?? substance
  return form && form !== 'anhydrous' ? `${name}, ${form}` : name
}
