import type { PersonId, StationId } from '../plan/ids.ts'
import type { LabPlan } from '../plan/lab-plan.ts'
import { judgeStrip } from '../plan/judge-strip.ts'
import { replenisherId } from '../plan/material.ts'
import { judge } from '../plan/limits.ts'
import type { EntryId } from '../record/ids.ts'
import type { Exception } from './exceptions.ts'
import type { Ledger } from './ledger.ts'
import type { Line } from './line.ts'
import { planOfLine, type Plans } from './plans.ts'
import type { ShiftPage } from './shift-page.ts'

/** What stands between a shift and its signature; each names what the person must settle. */
export type Blocker =
  | { code: 'shiftRunning' }
  | { code: 'missedWithoutReason'; check: string; due: number }
  | { code: 'stripUnread'; check: string; due: number }
  | { code: 'stripNotRepeated'; ref: EntryId }
  | { code: 'exceptionOpen'; ref: EntryId }
  | { code: 'holdOpen'; ref: EntryId }
  | { code: 'incidentNotSeen'; ref: EntryId }
  | { code: 'addWithoutRecheck'; ref: EntryId }
  | { code: 'addNotCheckable'; ref: EntryId }
  | { code: 'addWithoutCaution'; ref: EntryId }
  | { code: 'addWithoutSecondPerson'; ref: EntryId }
  | { code: 'instrumentNotProved'; check: string }
  | { code: 'changedByAnother'; ref: EntryId }
  | { code: 'verdictDiffers'; ref: EntryId }
  | { code: 'handoverNotGiven' }
  | { code: 'handoverNotAccepted' }

/** What nobody can put right any more. A signature does not pass over it: it names each, with the signer's remark. */
const lasting: ReadonlySet<Blocker['code']> = new Set<Blocker['code']>([
  'addNotCheckable', 'addWithoutCaution', 'addWithoutSecondPerson', 'instrumentNotProved', 'changedByAnother', 'verdictDiffers',
])

/** Whether somebody can still settle it; until then nobody signs. */
export const canBeSettled = ({ code }: Blocker): boolean => !lasting.has(code)

/** A blocker as the signature names it. */
export const openItemOf = (blocker: Blocker): { code: string; ref?: string } => {
  if ('ref' in blocker) return { code: blocker.code, ref: blocker.ref }
  if ('due' in blocker) return { code: blocker.code, ref: `${blocker.check} ${new Date(blocker.due).toISOString()}` }
  return 'check' in blocker ? { code: blocker.code, ref: blocker.check } : { code: blocker.code }
}

interface Around {
  ledger: Ledger
  plan: LabPlan
  plans: Plans
  /** The lines of the shift that stand. */
  lines: readonly Line[]
  isGated: (card: string) => boolean
}

export const blockersOf = (page: Omit<ShiftPage, 'blockers'>, around: Around): Blocker[] => [
  ...(page.isOver ? [] : [{ code: 'shiftRunning' } as const]),
  ...page.holds.flatMap(({ hold }): Blocker[] => (hold.released ? [] : [{ code: 'holdOpen', ref: hold.id }])),
  ...page.exceptions.flatMap(({ exception, isOpen }): Blocker[] => (isOpen ? openBlockers(exception, around) : [])),
  ...page.incidents.flatMap(({ line, seen }): Blocker[] => (seen ? [] : [{ code: 'incidentNotSeen', ref: line.id }])),
  ...addBlockers(page, around),
  ...gapBlockers(page, around.plan),
  ...page.instruments.flatMap(({ state, readings, check }): Blocker[] => (state !== 'proved' && readings > 0 ? [{ code: 'instrumentNotProved', check }] : [])),
  ...page.changes.flatMap(({ isByRight, id }): Blocker[] => (isByRight ? [] : [{ code: 'changedByAnother', ref: id }])),
  ...verdictBlockers(around),
  ...(page.handover.given ? (page.handover.accepted ? [] : [{ code: 'handoverNotAccepted' } as const]) : [{ code: 'handoverNotGiven' } as const]),
]

/** A strip that waits for its repeat says nothing yet: it is repeated, not handed on. */
const openBlockers = (exception: Exception, { plan, lines }: Around): Blocker[] => {
  const isStrip = plan.checks.some(({ id, kind }) => id === exception.check && kind === 'strip')
  if (isStrip && exception.state === 'toConfirm') return [{ code: 'stripNotRepeated', ref: exception.id }]
  return isHandedOver(exception, lines) ? [] : [{ code: 'exceptionOpen', ref: exception.id }]
}

/** In writing, by this shift: what an earlier one handed over must be handed on. */
const isHandedOver = ({ handedOver }: Exception, lines: readonly Line[]): boolean => lines.some(({ id }) => id === handedOver)

const addBlockers = ({ adds }: Omit<ShiftPage, 'blockers'>, { ledger, plan, isGated }: Around): Blocker[] =>
  adds.flatMap((add): Blocker[] => {
    const material = plan.materials.find(({ id }) => id === add.material)
    const caution = add.caution ? ledger.line(add.caution) : undefined
    const isConfirmed = caution?.kind === 'caution' && !caution.withdrawnBy && caution.enteredAt <= (ledger.line(add.id)?.enteredAt ?? add.time) + 60_000
    return [
      ...(add.recheck ? [] : [{ code: add.exception || isRead(plan, add.station) ? 'addWithoutRecheck' : 'addNotCheckable', ref: add.id } as const]),
      ...((add.material === replenisherId || (material && isGated(material.caution))) && !isConfirmed ? [{ code: 'addWithoutCaution', ref: add.id } as const] : []),
      ...(material?.secondPerson && (!add.secondPerson || add.secondPerson === add.person) ? [{ code: 'addWithoutSecondPerson', ref: add.id } as const] : []),
    ]
  })

/** Whether the plan has a reading in that bath at all. */
const isRead = (plan: LabPlan, station: StationId): boolean => plan.checks.some((check) => check.kind === 'reading' && check.station === station)

const gapBlockers = ({ coverage }: Omit<ShiftPage, 'blockers'>, plan: LabPlan): Blocker[] => {
  const strips = new Set(plan.checks.flatMap(({ id, kind }) => (kind === 'strip' ? [id] : [])))
  return coverage.occurrences.flatMap(({ status, check, dueAt }): Blocker[] => {
    if (status === 'missed') return [{ code: 'missedWithoutReason', check, due: dueAt }]
    if (strips.has(check) && (status === 'pending' || status === 'overdue')) return [{ code: 'stripUnread', check, due: dueAt }]
    return []
  })
}

/** A verdict that the plan named by the reading does not give: an old version of the app, or a tampered one. */
const verdictBlockers = ({ lines, plans }: Around): Blocker[] =>
  lines.flatMap((line): Blocker[] => {
    if (line.kind !== 'reading' && line.kind !== 'strip') return []
    const check = planOfLine(plans, line)?.plan.checks.find(({ id }) => id === line.data.check)
    const given =
      line.kind === 'reading'
        ? check?.kind === 'reading' && judge(check.limits, line.data.value).verdict
        : check?.kind === 'strip' && judgeStrip(check, line.data.figures, line.data.aims).verdict
    return given && given !== line.data.verdict ? [{ code: 'verdictDiffers', ref: line.id }] : []
  })

/** Nobody releases their own exceptions: those that a signer opened, answered or closed by hand. They wait for the countersign of another. */
export const ownExceptions = (page: ShiftPage, signer: PersonId): EntryId[] =>
  page.exceptions
    .filter(({ exception: { openedBy, closedBy, closedHow, doses } }) => openedBy === signer || (closedHow === 'byHand' && closedBy === signer) || doses.some(({ person }) => person === signer))
    .map(({ exception }) => exception.id)
