import type { EntryId } from '../record/ids.ts'
import type { Projection } from './projection.ts'

/** What is in a drum since it was last handed over: the run-offs by name, with their litres. */
export interface DrumNow {
  since: number
  litres: { [waste: string]: number }
  last: { id: EntryId; time: number }
}
export type Drums = { [drum: string]: DrumNow }

export const drums: Projection<Drums> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind === 'drumOut') delete state[line.data.drum]
    if (line.kind !== 'runOff' || line.data.destination.to !== 'drum') return
    const { drum } = line.data.destination
    const it = (state[drum] ??= { since: line.time, litres: {}, last: { id: line.id, time: line.time } })
    it.litres[line.data.waste] = (it.litres[line.data.waste] ?? 0) + line.data.litres
    it.last = { id: line.id, time: line.time }
  },
}
