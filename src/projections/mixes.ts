import type { FormulaId, PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import type { Line } from './line.ts'
import type { Projection } from './projection.ts'

export interface MixTick {
  id: EntryId
  order: number
  at: number
  by: PersonId | null
  celsius?: number
  lot?: string
}

/** A batch from its first water to the machine or the drum. Its id is that of the entry that began it. */
export interface MixNow {
  id: EntryId
  /** The plan whose formula it follows, whatever is in force since. */
  plan: EntryId
  formula: FormulaId
  name: string
  litres: number
  station: StationId
  startedAt: number
  by: PersonId | null
  /** In the order of the sheet, without gaps. */
  ticks: MixTick[]
  certificate?: { id: EntryId; at: number; by: PersonId | null; pH: number; specificGravity: number; label: string; strip?: EntryId }
  ended?: { id: EntryId; at: number; by: PersonId | null; how: 'connected' | 'discarded'; why?: string }
}
export type Mixes = { [id: EntryId]: MixNow }

export const mixes: Projection<Mixes> = {
  start: () => ({}),
  step: (state, line, plan) => {
    if (line.kind === 'mix') begun(state, line, plan)
    else if (line.kind === 'mixStep') {
      const it = state[line.data.mix]
      // A step that two phones have ticked is in once; the first to say so stands.
      if (!it || it.ended || line.data.order !== it.ticks.length) return
      const { order, celsius, lot } = line.data
      it.ticks.push({ id: line.id, order, at: line.time, by: line.person, ...(celsius === undefined ? {} : { celsius }), ...(lot ? { lot } : {}) })
    } else if (line.kind === 'mixCertificate') {
      const it = state[line.data.mix]
      if (!it || it.ended) return
      const { pH, specificGravity, label, strip } = line.data
      it.certificate = { id: line.id, at: line.time, by: line.person, pH, specificGravity, label, ...(strip ? { strip } : {}) }
    } else if (line.kind === 'mixEnd') {
      const it = state[line.data.mix]
      // Without its certificate nothing is connected, whatever a phone says.
      if (!it || it.ended || (line.data.how === 'connected' && !it.certificate)) return
      it.ended = { id: line.id, at: line.time, by: line.person, how: line.data.how, ...(line.data.why ? { why: line.data.why } : {}) }
    }
  },
  prune: (state, before) => {
    for (const it of Object.values(state)) if (it.ended && it.ended.at < before) delete state[it.id]
  },
}

const begun = (state: Mixes, line: Extract<Line, { kind: 'mix' }>, plan: LabPlan): void => {
  const formula = plan.formulas?.find(({ id }) => id === line.data.formula)
  if (!formula) return
  const { litres, station } = line.data
  state[line.id] = { id: line.id, plan: line.data.plan, formula: formula.id, name: formula.name, litres, station, startedAt: line.time, by: line.person, ticks: [] }
}

/** Batches under way, the oldest first. */
export const openMixes = (state: Mixes): MixNow[] => Object.values(state).filter(({ ended }) => !ended).sort((a, b) => a.startedAt - b.startedAt)
