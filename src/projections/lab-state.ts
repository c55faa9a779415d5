import type { LabPlan } from '../plan/lab-plan.ts'
import { checks, type Checks } from './checks.ts'
import { drums, type Drums } from './drums.ts'
import { exceptions, type Exceptions } from './exceptions.ts'
import { holds, type Holds } from './holds.ts'
import type { Line } from './line.ts'
import { machines, type Machines } from './machines.ts'
import { mixes, type Mixes } from './mixes.ts'
import type { Plans } from './plans.ts'
import type { Projection } from './projection.ts'
import { resets, type ResetNow } from './resets.ts'
import { strips, type Strips } from './strips.ts'

/** Everything that the screens know of the laboratory, folded from the log. */
export interface LabState {
  plans: Plans
  machines: Machines
  checks: Checks
  exceptions: Exceptions
  holds: Holds
  strips: Strips
  mixes: Mixes
  drums: Drums
  resets: ResetNow[]
}

/** What the fold changes line by line; the plans stand apart, as they are known throughout the log. */
export interface Folded extends Omit<LabState, 'plans'> {
  /** Day (of 24 hours from 1970) up to which what is long over was last forgotten. */
  prunedDay: number
}

const projections: { [K in Exclude<keyof Folded, 'prunedDay'>]: Projection<Folded[K]> } = { machines, checks, exceptions, holds, strips, mixes, drums, resets }
const names = Object.keys(projections) as (keyof typeof projections)[]

/** Raised whenever a fold gives another state for the same log: a snapshot of another version is not used. */
export const foldVersion = 4

const dayMilliseconds = 86_400_000
/** Closed exceptions, released holds and runs of the machines are in the state for this long; in the log for ever. */
export const keptDays = 90

export const emptyFold = (): Folded => ({
  machines: machines.start(),
  checks: checks.start(),
  exceptions: exceptions.start(),
  holds: holds.start(),
  strips: strips.start(),
  mixes: mixes.start(),
  drums: drums.start(),
  resets: resets.start(),
  prunedDay: 0,
})

export const stepFold = (state: Folded, line: Line, plan: LabPlan): void => {
  const day = Math.floor(line.time / dayMilliseconds)
  if (day > state.prunedDay) {
    state.prunedDay = day
    for (const name of names) projections[name].prune?.(state[name] as never, (day - keptDays) * dayMilliseconds)
  }
  for (const name of names) (projections[name] as Projection<Folded[typeof name]>).step(state[name], line, plan)
}
