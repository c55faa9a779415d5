import type { Formula } from '../plan/formula.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { MixNow } from '../projections/mixes.ts'
import type { Substance } from '../science/substances.ts'
import type { Form } from '../science/substances-table.ts'
import { beginSheet, type SheetMade } from './mixing-sheet.ts'

/** The sheet of a batch as it stands in the log: worked out anew from formula and litres, with what has gone in and what was certified. */
export const sheetOf = (mix: MixNow, formula: Formula, cautions: LabPlan['cautions']): SheetMade => {
  const made = beginSheet({
    formula: {
      name: formula.name,
      steps: formula.steps.map(({ substance, form, gramsPerLitre, millilitresPerLitre }) => ({
        // Substances and forms were checked when the plan was taken in.
        substance: substance as Substance,
        ...(form ? { form: form as Form } : {}),
        ...(gramsPerLitre === undefined ? {} : { gramsPerLitre }),
        ...(millilitresPerLitre === undefined ? {} : { millilitresPerLitre }),
      })),
    },
    litres: mix.litres,
    station: mix.station,
    meantFor: formula.for,
    startedAt: mix.startedAt,
    startWaterFraction: formula.startWaterFraction,
    cautions,
  })
  if (!made.ok) return made
  const { certificate } = mix
  return {
    ok: true,
    sheet: {
      ...made.sheet,
      ticks: mix.ticks.map(({ order, at, by, celsius, lot }) => ({ order, at, by, ...(celsius === undefined ? {} : { celsius }), ...(lot ? { lot } : {}) })),
      ...(certificate ? { certificate: { at: certificate.at, by: certificate.by, pH: certificate.pH, specificGravity: certificate.specificGravity, label: certificate.label, ...(certificate.strip ? { strip: certificate.strip } : {}) } } : {}),
    },
  }
}
