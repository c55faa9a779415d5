import type { MachineId, PersonId } from '../plan/ids.ts'
import type { EntryId } from '../record/ids.ts'
import type { Projection } from './projection.ts'

export interface HoldNow {
  id: EntryId
  machine: MachineId
  from: number
  by: PersonId | null
  reason: string
  exception?: EntryId
  filmAtRiskMetres?: number
  released?: { id: EntryId; at: number; by: PersonId | null; reason: string }
}
export type Holds = { [id: EntryId]: HoldNow }

export const holds: Projection<Holds> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind === 'hold') {
      const { machine, reason, exception, filmAtRiskMetres } = line.data
      state[line.id] = {
        id: line.id, machine, reason, from: line.time, by: line.person,
        ...(exception ? { exception } : {}),
        ...(filmAtRiskMetres !== undefined ? { filmAtRiskMetres } : {}),
      }
    }
    if (line.kind === 'release') {
      const hold = state[line.data.hold]
      if (hold && !hold.released) hold.released = { id: line.id, at: line.time, by: line.person, reason: line.data.reason }
    }
  },
  prune: (state, before) => {
    for (const hold of Object.values(state)) if (hold.released && hold.released.at < before) delete state[hold.id]
  },
}

export const standingHolds = (state: Holds, machine?: MachineId): HoldNow[] =>
  Object.values(state).filter((hold) => !hold.released && (machine === undefined || hold.machine === machine))
