import { checkOf, placeOf } from '../plan/find.ts'
import type { CheckId, MachineId, MaterialId, PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import { markOf, type Mark } from './checks.ts'
import type { Line, LineOf } from './line.ts'
import type { Projection } from './projection.ts'

export interface Dose {
  id: EntryId
  time: number
  material: MaterialId | 'water'
  poured: { amount: number; unit: 'mL' | 'L' | 'g' | 'kg' }
  portion: number
  lot?: string
  mixUntil: number
  predicted?: { from: number; to: number }
  person: PersonId | null
}

/** A reading out of limits, from first sight to closure. Its id is that of the reading that opened it. */
export interface Exception {
  id: EntryId
  check: CheckId
  station: StationId
  machine: MachineId
  openedAt: number
  openedBy: PersonId | null
  /** `toConfirm` until a repeat agrees; looks and checks that hold at once are open from the first. */
  state: 'toConfirm' | 'open' | 'closed'
  /** The reading that opened it, its repeats and its re-checks, in order. */
  marks: Mark[]
  doses: Dose[]
  cautions: { id: EntryId; card: string; material?: MaterialId }[]
  notes: EntryId[]
  closedAt?: number
  closedBy?: PersonId | null
  closedHow?: 'notConfirmed' | 'backInLimits' | 'byHand'
  closeReason?: string
}
export interface Exceptions {
  all: { [id: EntryId]: Exception }
  /** The one that is not closed, by check: a check has at most one. */
  open: { [check: CheckId]: EntryId }
  /** The last time each check was done: a WARN becomes an exception when somebody answers it. */
  last: { [check: CheckId]: Mark }
}

export const exceptions: Projection<Exceptions> = {
  start: () => ({ all: {}, open: {}, last: {} }),
  step: (state, line, plan) => {
    const done = markOf(line)
    if (done) stepMark(state, done.check, done.mark, line, plan)
    else if (line.kind === 'add') stepDose(state, line, plan)
    else if (line.kind === 'caution') {
      const exception = named(state, line.data.exception, plan)
      exception?.cautions.push({ id: line.id, card: line.data.card, ...(line.data.material ? { material: line.data.material } : {}) })
    } else if (line.kind === 'note') named(state, line.data.exception, plan)?.notes.push(line.id)
    else if (line.kind === 'close') {
      const exception = state.all[line.data.exception]
      if (exception && exception.state !== 'closed') {
        shut(state, exception, line.time, line.person, 'byHand')
        exception.closeReason = line.data.reason
      }
    }
  },
}

const stepMark = (state: Exceptions, check: CheckId, mark: Mark, line: Line, plan: LabPlan): void => {
  state.last[check] = mark
  const open = state.open[check]
  const exception = open ? state.all[open] : undefined
  if (!exception) {
    if (mark.verdict === 'ACT') opened(state, check, mark, opensAtOnce(plan, check, line) ? 'open' : 'toConfirm', plan)
    return
  }
  exception.marks.push(mark)
  if (exception.state === 'toConfirm') {
    if (mark.verdict === 'ACT') exception.state = 'open'
    else shut(state, exception, mark.time, mark.person, 'notConfirmed')
    return
  }
  // A reading taken while the dose is still mixing says nothing yet.
  const mixing = exception.doses.some(({ mixUntil }) => mark.time < mixUntil)
  if (mark.verdict === 'IN' && !mixing) shut(state, exception, mark.time, mark.person, 'backInLimits')
}

const stepDose = (state: Exceptions, line: LineOf<'add'>, plan: LabPlan): void => {
  const exception = named(state, line.data.exception, plan)
  if (!exception) return
  exception.doses.push({
    id: line.id,
    time: line.time,
    material: line.data.material,
    poured: { amount: line.data.poured.amount, unit: line.data.poured.unit },
    portion: line.data.portion,
    mixUntil: line.time + line.data.mixSeconds * 1000,
    person: line.person,
    ...(line.data.lot ? { lot: line.data.lot } : {}),
    ...(line.data.predicted ? { predicted: { from: line.data.predicted.from, to: line.data.predicted.to } } : {}),
  })
}

/** The exception that an entry names; a reading that was only WARN becomes one when it is answered. */
const named = (state: Exceptions, id: EntryId | undefined, plan: LabPlan): Exception | undefined => {
  if (!id) return undefined
  const known = state.all[id]
  if (known) return known
  const last = Object.entries(state.last).find(([, mark]) => mark.id === id)
  return last ? opened(state, last[0] as CheckId, last[1], 'open', plan) : undefined
}

const opened = (state: Exceptions, check: CheckId, mark: Mark, as: 'toConfirm' | 'open', plan: LabPlan): Exception => {
  const { machine, station } = placeOf(plan, checkOf(plan, check).station)
  const exception: Exception = {
    id: mark.id,
    check,
    station: station.id,
    machine: machine.id,
    openedAt: mark.time,
    openedBy: mark.person,
    state: as,
    marks: [mark],
    doses: [],
    cautions: [],
    notes: [],
  }
  state.all[exception.id] = exception
  state.open[check] = exception.id
  return exception
}

const shut = (state: Exceptions, exception: Exception, at: number, by: PersonId | null, how: NonNullable<Exception['closedHow']>): void => {
  exception.state = 'closed'
  exception.closedAt = at
  exception.closedBy = by
  exception.closedHow = how
  delete state.open[exception.check]
}

const opensAtOnce = (plan: LabPlan, check: CheckId, line: Line): boolean => line.kind === 'look' || checkOf(plan, check).immediateHold

/** What an exception waits for at an instant. */
export type Phase = 'toConfirm' | 'toCorrect' | 'mixing' | 'toRecheck' | 'closed'

export const phaseAt = (exception: Exception, time: number): Phase => {
  if (exception.state === 'closed') return 'closed'
  if (exception.state === 'toConfirm') return 'toConfirm'
  const dose = exception.doses.at(-1)
  if (!dose) return 'toCorrect'
  if (time < dose.mixUntil) return 'mixing'
  const rechecked = exception.marks.some((mark) => mark.time >= dose.mixUntil)
  return rechecked ? 'toCorrect' : 'toRecheck'
}

export const openExceptions = (state: Exceptions): Exception[] =>
  Object.values(state.open)
    .map((id) => state.all[id]!)
    .sort((a, b) => a.openedAt - b.openedAt)
