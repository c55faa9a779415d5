import type { LabPlan } from '../plan/lab-plan.ts'
import { checks, type Checks } from './checks.ts'
import { exceptions, type Exceptions } from './exceptions.ts'
import { holds, type Holds } from './holds.ts'
import { Ledger } from './ledger.ts'
import type { Arrived, Line } from './line.ts'
import { machines, type Machines } from './machines.ts'
import { planAt, planOfLine, stepPlans, type PlanInForce, type Plans } from './plans.ts'
import type { Projection } from './projection.ts'

/** Everything that the screens know of the laboratory, folded from the log. */
export interface LabState {
  plans: Plans
  machines: Machines
  checks: Checks
  exceptions: Exceptions
  holds: Holds
}

const projections: { [K in Exclude<keyof LabState, 'plans'>]: Projection<LabState[K]> } = { machines, checks, exceptions, holds }

export const emptyLab = (): LabState => ({
  plans: { revisions: [] },
  machines: machines.start(),
  checks: checks.start(),
  exceptions: exceptions.start(),
  holds: holds.start(),
})

export const stepLab = (state: LabState, line: Line): void => {
  if (line.withdrawnBy) return
  stepPlans(state.plans, line)
  const plan = planOfLine(state.plans, line)?.plan
  // Before any plan there is nothing that an entry could speak of; when the plan arrives the log is folded anew.
  if (!plan || !speaksOf(plan, line)) return
  for (const name of Object.keys(projections) as (keyof typeof projections)[])
    (projections[name] as Projection<LabState[typeof name]>).step(state[name], line, plan)
}

/** A line about a check, station or machine that the plan does not have is kept in the log and counted nowhere. */
const speaksOf = (plan: LabPlan, line: Line): boolean => {
  const data = line.data as { check?: string; station?: string; machine?: string }
  if (data.check !== undefined && !plan.checks.some(({ id }) => id === data.check)) return false
  if (data.machine !== undefined && !plan.machines.some(({ id }) => id === data.machine)) return false
  return data.station === undefined || plan.machines.some(({ stations }) => stations.some(({ id }) => id === data.station))
}

const checkpointEvery = 500

/** The log and its fold, kept up to date entry by entry; what comes late folds anew from the checkpoint before it. */
export class Lab {
  readonly ledger = new Ledger()
  #state = emptyLab()
  #folded = 0
  /** Snapshots as JSON, by the number of lines folded; the first is the empty laboratory. */
  #checkpoints: { lines: number; state: string }[] = [{ lines: 0, state: JSON.stringify(emptyLab()) }]

  get state(): LabState {
    return this.#state
  }

  plan(now: number): PlanInForce | undefined {
    return planAt(this.#state.plans, now)
  }

  add(arrived: readonly Arrived[]): void {
    const from = this.ledger.add(arrived)
    if (from === undefined) return
    if (from < this.#folded) {
      while (this.#checkpoints.at(-1)!.lines > from) this.#checkpoints.pop()
      const checkpoint = this.#checkpoints.at(-1)!
      this.#state = JSON.parse(checkpoint.state) as LabState
      this.#folded = checkpoint.lines
    }
    const lines = this.ledger.lines
    while (this.#folded < lines.length) {
      stepLab(this.#state, lines[this.#folded]!)
      this.#folded++
      if (this.#folded % checkpointEvery === 0) this.#checkpoints.push({ lines: this.#folded, state: JSON.stringify(this.#state) })
    }
  }
}
