import type { LabPlan } from '../plan/lab-plan.ts'
import type { Line } from './line.ts'

/**
 * A fold over the log. The state is plain JSON data, so that it can be kept as a snapshot; `step` changes it in place, which the
 * fold that owns it allows. It may read only its own state, the line and the plan: then every phone and the server agree.
 */
export interface Projection<S> {
  start(): S
  /** Called for every line that was not withdrawn, in order of time. */
  step(state: S, line: Line, plan: LabPlan): void
  /** Forgets what was over before an instant, so that the state does not grow with the years. The log keeps everything. */
  prune?(state: S, before: number): void
}
