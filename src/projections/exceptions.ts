import { checkOf, placeOf } from '../plan/find.ts'
import type { CheckId, MachineId, MaterialId, PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import type { EntryId } from '../record/ids.ts'
import { markOf, type Mark } from './checks.ts'
import type { Line, LineOf } from './line.ts'
import { isOverPoured } from './over-poured.ts'
import type { Projection } from './projection.ts'

export interface Dose {
  id: EntryId
  time: number
  material: MaterialId | 'water'
  poured: { amount: number; unit: 'mL' | 'L' | 'g' | 'kg' }
  portion: number
  lot?: string
  mixUntil: number
  /** So many readings after it has mixed tell its answer; one, where nothing is said. */
  rechecks?: number
  /** More was poured than was worked out. */
  isOver?: true
  /** What it went beyond: the plan's safe single dose, the room in the tank. */
  beyond?: string[]
  predicted?: { from: number; to: number; toTwice?: number }
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
  /** The last time before it that the check was in its action limits: from here film is at risk. */
  lastGood?: { id: EntryId; time: number }
  /** Given over to the next shift in writing; it stays open. */
  handedOver?: EntryId
  closedAt?: number
  closedBy?: PersonId | null
  closedHow?: 'notConfirmed' | 'backInLimits' | 'byHand'
  /** The reading or the entry that closed it. */
  closedWith?: EntryId
  closeReason?: string
}
export interface Exceptions {
  all: { [id: EntryId]: Exception }
  /** The one that is not closed, by check: a check has at most one. */
  open: { [check: CheckId]: EntryId }
  /** The last time each check was done. */
  last: { [check: CheckId]: Mark }
  /** The last time each check was within its action limits. */
  good: { [check: CheckId]: { id: EntryId; time: number } }
  /** The newest marks of each check, newest last: a WARN becomes an exception when somebody answers it, even after the next reading. */
  answerable: { [check: CheckId]: Mark[] }
}

const keptAnswerable = 4

export const exceptions: Projection<Exceptions> = {
  start: () => ({ all: {}, open: {}, last: {}, good: {}, answerable: {} }),
  step: (state, line, plan) => {
    const done = markOf(line)
    if (done) stepMark(state, done.check, done.mark, line, plan)
    else if (line.kind === 'add') stepDose(state, line, plan)
    else if (line.kind === 'caution') {
      const exception = named(state, line.data.exception, plan)
      exception?.cautions.push({ id: line.id, card: line.data.card, ...(line.data.material ? { material: line.data.material } : {}) })
    } else if (line.kind === 'hold') named(state, line.data.exception, plan)
    else if (line.kind === 'note') named(state, line.data.exception, plan)?.notes.push(line.id)
    else if (line.kind === 'close') stepClose(state, line)
    else if (line.kind === 'handover' && line.data.side === 'given')
      for (const id of line.data.open) {
        const exception = state.all[id]
        if (exception && exception.state !== 'closed') exception.handedOver = line.id
      }
  },
  prune: (state, before) => {
    for (const exception of Object.values(state.all)) if (exception.closedAt !== undefined && exception.closedAt < before) delete state.all[exception.id]
  },
}

const stepMark = (state: Exceptions, check: CheckId, mark: Mark, line: Line, plan: LabPlan): void => {
  const open = state.open[check]
  const exception = open ? state.all[open] : undefined
  if (exception) furtherMark(state, exception, mark)
  else if (mark.verdict === 'ACT') opened(state, check, mark, opensAtOnce(plan, check, line) ? 'open' : 'toConfirm', plan)
  state.last[check] = mark
  if (mark.verdict !== 'ACT') state.good[check] = { id: mark.id, time: mark.time }
  const answerable = (state.answerable[check] ??= [])
  answerable.push(mark)
  if (answerable.length > keptAnswerable) answerable.shift()
}

const furtherMark = (state: Exceptions, exception: Exception, mark: Mark): void => {
  exception.marks.push(mark)
  if (exception.state === 'toConfirm') {
    if (mark.verdict === 'ACT') exception.state = 'open'
    else shut(state, exception, mark, 'notConfirmed')
    return
  }
  // A reading taken while the dose is still mixing says nothing yet.
  if (mark.verdict === 'IN' && mark.time >= mixingUntil(exception) && rechecksLeft(exception) === 0) shut(state, exception, mark, 'backInLimits')
}

const predictedOf = ({ from, to, toTwice }: NonNullable<LineOf<'add'>['data']['predicted']>): NonNullable<Dose['predicted']> => ({
  from, to, ...(toTwice === undefined ? {} : { toTwice }),
})

const stepDose = (state: Exceptions, line: LineOf<'add'>, plan: LabPlan): void => {
  const said = named(state, line.data.exception, plan)
  if (!said) return
  const exception = said.state === 'closed' ? openAgain(state, said) : said
  // Whoever pours has made up their mind; what is read next is a re-check, not a repeat.
  exception.state = 'open'
  exception.doses.push({
    id: line.id,
    time: line.time,
    material: line.data.material,
    poured: { amount: line.data.poured.amount, unit: line.data.poured.unit },
    portion: line.data.portion,
    mixUntil: line.time + line.data.mixSeconds * 1000,
    person: line.person,
    ...(line.data.lot ? { lot: line.data.lot } : {}),
    ...(isOverPoured(line.data) ? { isOver: true as const } : {}),
    ...(line.data.beyond ? { beyond: [...line.data.beyond] } : {}),
    ...(line.data.rechecks ? { rechecks: line.data.rechecks } : {}),
    ...(line.data.predicted ? { predicted: predictedOf(line.data.predicted) } : {}),
  })
}

const stepClose = (state: Exceptions, line: LineOf<'close'>): void => {
  const exception = state.all[line.data.exception]
  if (!exception || exception.state === 'closed') return
  if (line.data.reason === 'handedOver') {
    exception.handedOver = line.id
    return
  }
  shut(state, exception, line, 'byHand')
  exception.closeReason = line.data.reason
}

/** The exception that an entry names; a reading that was only WARN, or was amended since, becomes one when it is answered. */
const named = (state: Exceptions, id: EntryId | undefined, plan: LabPlan): Exception | undefined => {
  if (!id) return undefined
  const known = state.all[id]
  if (known) return known
  for (const [check, marks] of Object.entries(state.answerable) as [CheckId, Mark[]][]) {
    const index = marks.findIndex((mark) => mark.id === id)
    if (index < 0) continue
    const open = state.open[check]
    if (open) return state.all[open]
    if (!plan.checks.some((it) => it.id === check)) return undefined
    const exception = opened(state, check, marks[index]!, 'open', plan)
    exception.marks.push(...marks.slice(index + 1))
    return exception
  }
  return undefined
}

const opened = (state: Exceptions, check: CheckId, mark: Mark, as: 'toConfirm' | 'open', plan: LabPlan): Exception => {
  const { machine, station } = placeOf(plan, checkOf(plan, check).station)
  const good = state.good[check]
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
    ...(good && good.time <= mark.time ? { lastGood: good } : {}),
  }
  state.all[exception.id] = exception
  state.open[check] = exception.id
  return exception
}

/** Another phone closed it before it knew of this dose: what was poured must be read again. */
const openAgain = (state: Exceptions, exception: Exception): Exception => {
  const other = state.open[exception.check]
  if (other) return state.all[other]!
  delete exception.closedAt
  delete exception.closedBy
  delete exception.closedHow
  delete exception.closedWith
  delete exception.closeReason
  state.open[exception.check] = exception.id
  return exception
}

const shut = (state: Exceptions, exception: Exception, by: { id: EntryId; time: number; person: PersonId | null }, how: NonNullable<Exception['closedHow']>): void => {
  exception.state = 'closed'
  exception.closedAt = by.time
  exception.closedBy = by.person
  exception.closedHow = how
  exception.closedWith = by.id
  delete state.open[exception.check]
}

const opensAtOnce = (plan: LabPlan, check: CheckId, line: Line): boolean => line.kind === 'look' || checkOf(plan, check).immediateHold

/** Until when a bath is mixing for this exception; 0 when nothing was poured. */
export const mixingUntil = (exception: Exception): number => exception.doses.reduce((latest, { mixUntil }) => Math.max(latest, mixUntil), 0)

/** How many readings of the mixed bath are still wanted before what was poured is judged, the exception closed or the next portion given. */
export const rechecksLeft = (exception: Exception): number => {
  const until = mixingUntil(exception)
  const wanted = exception.doses.reduce((most, { mixUntil, rechecks = 1 }) => (mixUntil === until ? Math.max(most, rechecks) : most), 0)
  return Math.max(0, wanted - exception.marks.filter((mark) => mark.time >= until).length)
}

/** What an exception waits for at an instant. */
export type Phase = 'toConfirm' | 'toCorrect' | 'mixing' | 'toRecheck' | 'closed'

export const phaseAt = (exception: Exception, time: number): Phase => {
  if (exception.state === 'closed') return 'closed'
  if (exception.state === 'toConfirm') return 'toConfirm'
  if (!exception.doses.length) return 'toCorrect'
  const until = mixingUntil(exception)
  if (time < until) return 'mixing'
  return rechecksLeft(exception) > 0 ? 'toRecheck' : 'toCorrect'
}

export const openExceptions = (state: Exceptions): Exception[] =>
  Object.values(state.open)
    .map((id) => state.all[id]!)
    .sort((a, b) => a.openedAt - b.openedAt || (a.id < b.id ? -1 : 1))
