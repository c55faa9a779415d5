import type { Check } from '../plan/check.ts'
import { placeOf } from '../plan/find.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { MachineState } from '../plan/schedule.ts'
import type { Skip } from '../record/kinds/skip.ts'

export type SkipReason = Skip['reason']

/** The reasons of the trade that can be true of a check here and now, the likeliest first. The last is always `other`, in words of one's own. */
export const skipReasons = (plan: LabPlan, check: Check, machineState: MachineState): SkipReason[] => {
  const { machine } = placeOf(plan, check.station)
  const fits: Record<SkipReason, boolean> = {
    machineStopped: machineState !== 'running',
    darkWork: check.darkWork === true || machine.light === 'panchromatic',
    instrumentFault: check.kind !== 'look',
    sampleLost: check.kind === 'strip' || (check.kind === 'reading' && (check.method !== undefined || (check.settleSeconds ?? 0) > 0)),
    noAccess: true,
    otherWork: true,
    noStaff: true,
    other: true,
  }
  return (Object.keys(fits) as SkipReason[]).filter((reason) => fits[reason])
}

/** `other` says nothing by itself. */
export const needsRemark = (reason: SkipReason): boolean => reason === 'other'
