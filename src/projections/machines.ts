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
  prune: (state, before) => {
    for (const machine of Object.values(state)) {
      const first = machine.spans.findLastIndex(({ from }) => from < before)
      if (first > 0) machine.spans.splice(0, first)
    }
  },
}

/** The span in force at an instant. A machine nobody has spoken of is stopped. */
export const spanAt = (machine: MachineNow | undefined, time: number): RunSpan => {
  const span = machine?.spans.findLast(({ from }) => from <= time)
  return span ?? { from: Number.NEGATIVE_INFINITY, state: 'stopped', metresPerMinute: 0 }
}

/** Since when, at an instant, the machine has been in one of some states: a change of speed does not start it anew. */
export const stateSince = (machine: MachineNow | undefined, states: readonly MachineState[], time: number): number => {
  const spans = machine?.spans ?? []
  let since = Number.NaN
  for (let index = spans.length - 1; index >= 0; index--) {
    const span = spans[index]!
    // What lasted no time was no state: a stop and a start of one instant.
    if (span.from > time || spans[index + 1]?.from === span.from) continue
    if (!states.includes(span.state)) return Number.isNaN(since) ? time : since
    since = span.from
  }
  // Before anybody spoke of it the machine stood still.
  if (states.includes('stopped')) return Number.NEGATIVE_INFINITY
  return Number.isNaN(since) ? time : since
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
