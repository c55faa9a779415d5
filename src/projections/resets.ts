import type { MaterialId, PersonId, StationId } from '../plan/ids.ts'
import type { EntryId } from '../record/ids.ts'
import type { Projection } from './projection.ts'

/** A learned response that was put back to nought: by somebody, with the reason in words, or by a new bath (`newBath`). */
export interface ResetNow {
  id: EntryId
  station: StationId
  material?: MaterialId
  at: number
  by: PersonId | null
  why: string
}

/** The newest last. */
export const resets: Projection<ResetNow[]> = {
  start: () => [],
  step: (state, line) => {
    if (line.kind === 'mixEnd' && line.data.how === 'connected' && line.data.newBath) state.push({ id: line.id, station: line.data.newBath, at: line.time, by: line.person, why: 'newBath' })
    if (line.kind !== 'responseReset') return
    const { station, material, why } = line.data
    state.push({ id: line.id, station, at: line.time, by: line.person, why, ...(material ? { material } : {}) })
  },
  prune: (state, before) => {
    while (state[0] && state[0].at < before) state.shift()
  },
}
