import type { OccurrenceStatus } from '../../../projections/occurrences.ts'

const count = (number: number, one: string, many: string): string => `${number} ${number === 1 ? one : many}`

export const shift = {
  title: 'Shift',
  span: (from: string, to: string): string => `${from} to ${to}`,
  earlier: 'The shift before',
  later: 'The shift after',
  coverage: {
    title: 'Coverage',
    of: (done: number, all: number): string => `${done} of ${all} in time`,
    picture: (machine: string, counts: string): string => `${machine}: ${counts}. Each mark is a check in the order of the film, at the time it was due.`,
    statuses: {
      done: 'in time',
      late: 'late',
      skipped: 'left out, with a reason',
      machineStopped: 'machine stopped',
      missed: 'missed, no reason',
      missedWithReason: 'missed, with a reason',
      pending: 'due now',
      overdue: 'late now',
    } satisfies Record<OccurrenceStatus, string>,
    none: 'Nothing was due in this shift.',
  },
  missed: { title: 'Missed without a reason', because: 'Say why', more: (number: number): string => `and ${number} more` },
  exceptions: {
    title: 'Out of limits',
    none: 'Nothing was out of limits.',
    open: 'open',
    closed: { notConfirmed: 'not confirmed by the repeat', backInLimits: 'back in limits', byHand: 'closed by hand' },
    minutes: (span: string): string => `open for ${span}`,
    adds: (number: number): string => count(number, 'add', 'adds'),
  },
  holds: { title: 'Holds', none: 'No machine was held.', standing: 'still held', released: (when: string): string => `released ${when}`, atRisk: 'film at risk' },
  adds: { title: 'Adds', none: 'Nothing was added.', lot: (lot: string): string => `lot ${lot}`, water: 'Water' },
  notes: {
    title: 'Log',
    none: 'Nothing is written yet.',
    write: 'Write in the log',
    text: 'What happened',
    about: 'About',
    kinds: { general: 'General', incident: 'Incident', waste: 'Run-off or waste', maintenance: 'Upkeep', handover: 'For the next shift' },
    save: 'Save in the log',
    empty: 'Write what happened, then save.',
  },
}
