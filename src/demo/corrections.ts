import type { ReadingCheck } from '../plan/check.ts'
import { placeOf } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { Material } from '../plan/material.ts'
import type { DataOf } from '../record/kinds.ts'
import { acidBaseDose } from '../science/acidBase/dose.ts'
import { evaluate } from '../science/evaluate.ts'

export interface DemoDose {
  material: Material
  /** What is poured first, and what it should do. */
  amount: number
  to: number
  working: NonNullable<DataOf<'add'>['working']>
  mixSeconds: number
}

/** What moves the pH of a bath which way, in the demo: the mild reagent of its own formula. */
const reagents: Readonly<Record<string, readonly string[]>> = {
  'fixing high': ['acetic-acid-28'],
  'developer high': ['boric-acid', 'sodium-bicarbonate'],
  'developer low': ['borax', 'sodium-carbonate'],
}

/** The first portion for a bath whose pH is out, from the same calculation that the screens use; undefined where the demo has no remedy. */
export const demoDose = (plan: LabPlan, check: ReadingCheck, found: number): DemoDose | undefined => {
  const { station } = placeOf(plan, check.station)
  const { bath } = station
  if (check.quantity !== 'pH' || !bath) return undefined
  const wanted = reagents[`${station.kind} ${found > check.limits.aim ? 'high' : 'low'}`] ?? []
  const material = plan.materials.find((it) => wanted.includes(it.id) && it.for.includes(station.id))
  if (!material) return undefined
  const { strength } = material
  const inputs = {
    celsius: 21,
    litres: bath.litres,
    bath: bath.constituents.map(({ substance, form, gramsPerLitre }) => ({ substance, gramsPerLitre, ...(form ? { form } : {}) })),
    measuredPh: found,
    aimPh: check.limits.aim,
    reagent: {
      substance: material.substance,
      ...(strength.kind === 'percent'
        ? { percentByMass: strength.percentByMass, gramsPerMillilitre: strength.gramsPerMillilitre }
        : strength.kind === 'molar'
          ? { molPerLitre: strength.molPerLitre }
          : { form: strength.form }),
    },
  }
  const { result } = evaluate(acidBaseDose, inputs as Parameters<typeof evaluate<typeof acidBaseDose.inputs, typeof acidBaseDose.outputs>>[1])
  return {
    material,
    amount: Math.round(result.firstPortion / 10) * 10,
    to: result.firstPortionPh,
    working: { calculation: acidBaseDose.id, inputs, result },
    // Three turnovers of the bath: common practice for pH.
    mixSeconds: Math.round((3 * bath.litres * 60) / bath.circulationLitresPerMinute),
  }
}
