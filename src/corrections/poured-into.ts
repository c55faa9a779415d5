import type { LabPlan } from '../plan/lab-plan.ts'
import type { Station } from '../plan/machine.ts'
import type { LabState } from '../projections/lab.ts'
import { factsOf, type Substance } from '../science/substances.ts'
import type { ConstituentNow } from './bath-now.ts'
import { concentrationAt } from './bath-now.ts'
import { sameUnit, staysMilliseconds } from './dose-limits.ts'
import { gramsPerUnit } from './remedies/mass-balance.ts'
import { dosesInto } from './situation.ts'

/**
 * A bath with what was poured into it in the last day. A weak acid stays in the bath as its buffer: left out, the second portion of acetic acid into
 * a fixing bath comes out a quarter too small, and the bath seems to answer too little. What was poured before a constituent was titrated is in the
 * titrated strength already. Neglected: carry-out, and the volume that the doses bring (2 % for 12 L in 640 L).
 */
export const withPoured = (
  constituents: readonly ConstituentNow[],
  { lab, plan, station, readAt, now }: { lab: LabState; plan: LabPlan; station: Station; readAt: number; now: number },
): ConstituentNow[] => {
  const sum = constituents.map((it) => ({ ...it }))
  for (const { material: id, poured, time } of dosesInto(lab, station.id)) {
    const material = plan.materials.find((it) => it.id === id)
    if (!material || !station.bath || time < now - staysMilliseconds || time > readAt) continue
    const substance = material.substance as Substance
    const titrated = concentrationAt(lab, plan, station, substance, now)
    if (!factsOf(substance).brings || (titrated && titrated.mark.time > time)) continue
    const listed = sum.find((it) => it.substance === substance)
    const grams = sameUnit(poured, material.unit) * gramsPerUnit(material, listed?.form ?? 'anhydrous')
    if (listed) listed.gramsPerLitre += grams / station.bath.litres
    else sum.push({ substance, gramsPerLitre: grams / station.bath.litres })
  }
  return sum
}
