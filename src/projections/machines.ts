import type { MachineId } from '../plan/ids.ts'
import type { MachineState } from '../plan/schedule.ts'
import type { Projection } from './projection.ts'

export interface RunSpan {
  from: number
  state: MachineState
  metresPerMinute: number
}
export interface MachineNow {
  /** Spans in order; each lasts until the next begins. */
  spans: RunSpan[]
}
export type Machines = { [id: MachineId]: MachineNow }

export const machines: Projection<Machines> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind !== 'run') return
    const machine = (state[line.data.machine] ??= { spans: [] })
    machine.spans.push({ from: line.time, state: line.data.state, metresPerMinute: line.data.metresPerMinute ?? 0 })
  },
}

/** The span in force at an instant. A machine nobody has spoken of is stopped. */
export const spanAt = (machine: MachineNow | undefined, time: number): RunSpan => {
  const span = machine?.spans.findLast(({ from }) => from <= time)
  return span ?? { from: Number.NEGATIVE_INFINITY, state: 'stopped', metresPerMinute: 0 }
}

/** Film run between two instants, in metres. */
export const metresRun = (machine: MachineNow | undefined, from: number, to: number): number => {
  const spans = machine?.spans ?? []
  let metres = 0
  spans.forEach((span, index) => {
    if (span.state !== 'running') return
    const start = Math.max(span.from, from)
    const end = Math.min(spans[index + 1]?.from ?? to, to)
    if (end > start) metres += ((end - start) / 60_000) * span.metresPerMinute
  })
  return metres
}
