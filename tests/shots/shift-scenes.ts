import { appendable } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, MachineId, PersonId } from '../../src/plan/ids.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { Lab } from '../../src/projections/lab.ts'
import { canBeSettled } from '../../src/projections/shift-blockers.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import type { EntryId, Hash } from '../../src/record/ids.ts'
import type { Log } from './log.ts'
import type { Scene } from './scenes.ts'

const at = Date.parse('2026-01-14T14:06:00Z')
const plan = demoLab()
const supervisor = 'helena' as PersonId
const span = shiftAt(plan, at - 30 * 60_000)
const minutesAgo = (time: number): number => (at - time) / 60_000

/** What the invented laboratory did in the shift before and in this one. */
const told = (log: Log, leftOut: (draft: ReturnType<typeof demoHistory>[number]) => boolean = () => false): EntryId => {
  const planEntry = log.add('plan', 60 * 24 * 30, { plan, effectiveFrom: 0 }, supervisor)
  const became = new Map<EntryId, EntryId>()
  for (const draft of demoHistory({ seed: 7, plan, planEntry, until: at, shifts: 1 })) {
    if (leftOut(draft)) continue
    const { kind, data } = appendable(draft, became)
    became.set(draft.id, log.add(kind, minutesAgo(draft.time), data, draft.person))
  }
  return planEntry
}

const isOfHandover = ({ kind, data }: { kind: string; data: unknown }): boolean => kind === 'handover' && (data as { shift: string }).shift === span.shift.id

const labOf = (log: Log): Lab => {
  const lab = new Lab()
  lab.add(log.entries)
  return lab
}

/** Everything that can be settled is settled, as a shift that took care would have done. */
const settle = (log: Log): void => {
  const handOver = (side: 'given' | 'accepted', open: EntryId[]): void =>
    void log.add('handover', side === 'given' ? 10 : 6, { shift: span.shift.id, date: span.date, notes: side === 'given' ? 'Both machines run. Watch the fixing bath of the negative machine: its pH climbs.' : '', open, side }, side === 'given' ? 'marta' : 'tomas')
  const page = shiftPage({ lab: labOf(log), plan, span, now: at })
  for (const it of page.blockers) if (it.code === 'missedWithoutReason') log.add('skip', 5, { check: it.check as CheckId, due: it.due, reason: 'otherWork' }, 'marta')
  const open = page.exceptions.filter((it) => it.isOpen).map(({ exception }) => exception.id)
  handOver('given', open)
  handOver('accepted', open)
}

const troubled = (log: Log): void => {
  const planEntry = told(log, (draft) => isOfHandover(draft) || (draft.kind === 'reading' && draft.time > at - 90 * 60_000 && (draft.data as { check: string }).check.startsWith('pos-2')))
  const out = { check: 'neg-1-fix-ph' as CheckId, plan: planEntry, value: 4.92, keyed: '4.92', unit: 'pH', how: 'keyed', verdict: 'ACT' } as const
  const exception = log.add('reading', 22, out, 'marta')
  log.add('reading', 20, { ...out, repeatOf: exception }, 'marta')
  log.add('note', 19, { text: 'Squeegee before the fixing bath worn: developer carried over', about: 'cause', exception }, 'marta')
  const caution = log.add('caution', 12, { card: 'acetic-acid-28', version: 1, material: 'acetic-acid-28' as never, station: 'neg-1-fix' as never, exception, lines: ['never'] }, 'marta')
  log.add('add', 4, { station: 'neg-1-fix' as never, material: 'acetic-acid-28' as never, exception, portion: 1, caution, lot: 'L 2207', poured: { amount: 2350, unit: 'mL', keyed: '2350' }, mixSeconds: 720, predicted: { quantity: 'pH', from: 4.92, to: 4.6 } }, 'marta')
  log.add('hold', 40, { machine: 'pos-2' as MachineId, reason: 'Scratch on the base side', filmAtRiskMetres: 1737 }, 'marta')
  log.add('note', 38, { text: 'Splice parted in the dryer of the positive machine; 40 ft of leader lost.', about: 'incident', machine: 'pos-2' as MachineId }, 'marta')
  log.add('runOff', 50, { station: 'neg-1-fix' as never, waste: 'usedFixing', litres: 20, destination: { to: 'recovery' } }, 'marta')
  log.add('runOff', 35, { station: 'neg-1-fix' as never, waste: 'iodineTitration', litres: 0.3, destination: { to: 'drum', drum: 'iodine' } }, 'marta')
}

const sign = async (log: Log, sha256: (text: string) => Promise<Hash>, provisional = false): Promise<EntryId> => {
  const page = shiftPage({ lab: labOf(log), plan, span, now: at })
  return log.add('signOff', 4, {
    shift: span.shift.id, date: span.date, from: span.from, to: span.to, covers: page.covers, digest: await sha256(page.digestText), meaning: 'reviewedAndReleased', provisional,
    openItems: page.blockers.filter((it) => !canBeSettled(it)).map(({ code }) => ({ code })), remark: 'Seen with the operators; the rolls in question were looked at.',
  }, supervisor)
}

const sha256 = async (text: string): Promise<Hash> => {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text)))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('') as Hash
}

const path = (): string => `/shift/${span.date}/${span.shift.id}`

export const shiftScenes: Record<string, Scene> = {
  'shift-now': { at, path: () => '/shift', person: 'marta' as PersonId, log: (log) => void told(log) },
  'shift-blocked': {
    at, path, person: supervisor,
    log: (log) => {
      told(log, (draft) => isOfHandover(draft) || (draft.kind === 'reading' && draft.time > span.to - 150 * 60_000 && (draft.data as { check: string }).check.startsWith('pos-2')))
      log.add('hold', 40, { machine: 'pos-2' as MachineId, reason: 'Scratch on the base side' }, 'marta')
    },
  },
  /** Every machine has something: one is held, a bath is mixing, checks are late; an incident waits for a supervisor. */
  board: {
    at, path: () => '/board', person: null,
    log: (log) => troubled(log),
  },
  'shift-troubled': { at, path, person: supervisor, log: (log) => troubled(log) },
  'shift-accept': {
    at, path: () => '/shift', person: 'tomas' as PersonId,
    log: (log) => {
      troubled(log)
      log.add('handover', 8, { shift: span.shift.id, date: span.date, notes: 'Both machines run. Watch the fixing bath of the negative machine: its pH climbs.', open: [], side: 'given' }, 'marta')
    },
  },
  'shift-signable': { at, path, person: supervisor, log: (log) => { told(log, isOfHandover); settle(log) } },
  'sheet-sign': { at, path, person: supervisor, log: (log) => { told(log, isOfHandover); settle(log) }, press: ['Sign this shift'] },
  'sheet-handover': { at, path: () => '/shift', person: 'marta' as PersonId, log: (log) => troubled(log), press: ['Hand the shift over'] },
  'shift-own': {
    at, path, person: supervisor,
    log: (log) => {
      const planEntry = told(log, isOfHandover)
      for (const back of [200, 198, 190])
        log.add('reading', back, { check: 'neg-1-fix-ph' as CheckId, plan: planEntry, value: back === 190 ? 4.5 : 4.92, keyed: back === 190 ? '4.50' : '4.92', unit: 'pH', how: 'keyed', verdict: back === 190 ? 'IN' : 'ACT' }, supervisor)
      settle(log)
    },
  },
  'shift-signed': { at, path, person: supervisor, log: async (log) => { told(log, isOfHandover); settle(log); await sign(log, sha256) } },
  'shift-late': {
    at, path, person: supervisor,
    log: async (log) => {
      const planEntry = told(log, isOfHandover)
      settle(log)
      await sign(log, sha256, true)
      log.add('reading', 100, { check: 'neg-1-fix-ph' as CheckId, plan: planEntry, value: 4.55, keyed: '4.55', unit: 'pH', how: 'keyed', verdict: 'IN' }, 'tomas')
      log.add('note', 90, { text: 'Found the squeegee rubber of the first wash worn; new one ordered.', about: 'maintenance' }, 'tomas')
    },
  },
}
