import type { LabPlan } from '../plan/lab-plan.ts'
import type { Bath, Machine, Station } from '../plan/machine.ts'
import type { Material } from '../plan/material.ts'
import type { Exception } from '../projections/exceptions.ts'
import type { Mark } from '../projections/checks.ts'
import type { LabState } from '../projections/lab.ts'
import type { CautionCard } from '../safety/card.ts'
import type { Refused } from './say.ts'
import type { ResponseReset } from './situation.ts'

/** A dose as the interlocks see it. The amount is there only where somebody names one of their own. */
export interface DoseAsked {
  lab: LabState
  plan: LabPlan
  now: number
  machine: Machine
  station: Station
  bath: Bath
  material: Material | 'water'
  card?: CautionCard
  exception?: Exception
  /** The reading from which the dose is worked out. */
  mark?: Mark
  /** The lot about to be used, where it is known by now. */
  lot?: string
  resets: readonly ResponseReset[]
  amount?: { amount: number; unit: 'mL' | 'L' | 'g' | 'kg' }
}

/** Says why a dose must not be given, or nothing. Each interlock is a file, with tests both ways. */
export type Interlock = (asked: DoseAsked) => Refused | undefined
