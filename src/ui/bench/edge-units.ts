import type { DisplayUnits } from '../../plan/lab-plan.ts'
import { convert, shownIn } from '../../science/units.ts'
import type { EdgeUnits } from './form.ts'

/** The units in which the laboratory reads; before there is a plan, those of the calculations. */
export const edgeUnits =
  (lab: DisplayUnits | undefined): EdgeUnits =>
  (unit) => {
    const shown = lab ? shownIn(lab, unit) : unit
    return {
      shown,
      toShown: (value) => convert({ value, from: unit, to: shown }),
      fromShown: (value) => convert({ value, from: shown, to: unit }),
    }
  }
