import { placeOf } from '../plan/find.ts'
import type { PersonId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judge, type Limits } from '../plan/limits.ts'
import { isDeveloper } from './bath-now.ts'
import { readingsAt } from './lookup.ts'
import { nextStep, type Certificate, type MixingSheet } from './mixing-sheet.ts'
import { say, type Say } from './say.ts'

export interface CertificateAsked {
  at: number
  by: PersonId | null
  pH: number
  specificGravity: number
  /** What is written on the tank: batch, date, what it is. */
  label: string
  /** A strip or small-tank test that came out in limits, by its entry; asked of developers. */
  strip?: { id: string; verdict: 'IN' | 'WARN' | 'ACT' } | undefined
  /** Limits of the mix card, where they are not those of the bath: a replenisher is stronger. */
  limits?: { pH: Limits; specificGravity: Limits } | undefined
}

export type Certified = { ok: true; sheet: MixingSheet } | { ok: false; reasons: readonly Say[] }

/**
 * A new mix is connected only when it is certified: everything in, pH and specific gravity within the limits of the bath it is for, labelled, and a
 * developer proven by a strip. US Navy Photography (Advanced) ch. 2; the strip from memory.
 */
export const certify = (plan: LabPlan, sheet: MixingSheet, given: CertificateAsked): Certified => {
  const { station } = placeOf(plan, sheet.meantFor)
  const pH = given.limits?.pH ?? readingsAt(plan, sheet.meantFor, 'pH')[0]?.limits
  const gravity = given.limits?.specificGravity ?? readingsAt(plan, sheet.meantFor, 'specificGravity')[0]?.limits
  const reasons = [
    ...(nextStep(sheet) ? [say('notAllIn', { next: nextStep(sheet)!.substance })] : []),
    ...(pH && judge(pH, given.pH).verdict !== 'IN' ? [say('pHNotInLimits', { found: given.pH, aim: pH.aim })] : []),
    ...(gravity && judge(gravity, given.specificGravity).verdict !== 'IN' ? [say('specificGravityNotInLimits', { found: given.specificGravity, aim: gravity.aim })] : []),
    ...(given.label.trim() ? [] : [say('noLabel')]),
    ...(isDeveloper(station) && !given.strip ? [say('stripMissing')] : []),
    ...(given.strip && given.strip.verdict !== 'IN' ? [say('stripNotInLimits')] : []),
    ...(pH ? [] : [say('noPhCheckInPlan', { station: sheet.meantFor })]),
  ]
  if (reasons.length) return { ok: false, reasons }
  const { at, by, label, specificGravity, strip } = given
  const certificate: Certificate = { at, by, pH: given.pH, specificGravity, label, ...(strip ? { strip: strip.id } : {}) }
  return { ok: true, sheet: { ...sheet, certificate } }
}

/** Whether the mix may be connected to the machine. */
export const mayConnect = (sheet: MixingSheet): boolean => sheet.certificate !== undefined
