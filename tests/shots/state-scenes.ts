import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, MachineId, MaterialId, StationId } from '../../src/plan/ids.ts'
import { replenisherId } from '../../src/plan/material.ts'
import { cardById } from '../../src/safety/cards.ts'
import type { EntryId } from '../../src/record/ids.ts'
import type { Sending } from '../../src/ui/app-context.ts'
import type { Log } from './log.ts'
import type { Scene } from './scenes.ts'
import { past } from './strip-scenes.ts'

const at = Date.parse('2026-01-14T14:06:00Z')
const hour = 60 * 60_000
const plan = demoLab()
const now = (): string => '/now'
const log = (it: Log): void => void past(it)
const ph = '/check/neg-1-fix-ph'

const waiting = (hours: number, more: Partial<Sending> = {}): Sending => ({ waiting: 14, oldestAt: at - hours * hour, concern: 'none', state: 'offline', problem: 'unreachable', isLasting: false, ...more })

const read = (it: Log, planEntry: EntryId, check: string, minutesAgo: number, value: number, of?: EntryId): EntryId =>
  it.add('reading', minutesAgo, { check: check as CheckId, plan: planEntry, value, keyed: String(value), unit: check.endsWith('ph') ? 'pH' : check.endsWith('sulfite') ? 'g/L' : 'mm', how: 'keyed', verdict: check.endsWith('sulfite') ? 'IN' : 'ACT', ...(of ? { repeatOf: of } : {}) })
/** Out, and out again. */
const confirmed = (it: Log, check: string, value: number): EntryId => {
  const planEntry = past(it)
  read(it, planEntry, 'neg-1-fix-sulfite', 20, 13.5)
  const out = read(it, planEntry, check, 18, value)
  read(it, planEntry, check, 15, value, out)
  return out
}
const cautioned = (it: Log, out: EntryId, material: string, ...cards: string[]): EntryId => {
  for (const id of cards) {
    const card = cardById(id)!
    it.add('caution', 12, { card: id, version: card.version, material: material as MaterialId, exception: out, lines: [...card.deadliest] })
  }
  return out
}
const acidSeen = (it: Log): EntryId => cautioned(it, confirmed(it, 'neg-1-fix-ph', 4.92), 'acetic-acid-28', 'acetic-acid-28', 'op-acid-dose')
const acid = encodeURIComponent('acid:acetic-acid-28')
const keyed = (digits: string) => ({ 'check:neg-1-fix-ph': { keyed: digits, stationSince: at - 200_000, settling: { seconds: 90, wall: at - 100_000, mono: 0, session: 'before' }, atTank: false } })

/** A round with its last step before it. */
const lastStep = () => ({
  round: { v: 1, id: 'r', machine: 'neg-1' as MachineId, dueAt: at - hour / 2, startedAt: at - 6 * 60_000, steps: [{ check: 'neg-1-fix-ph' as CheckId, station: 'neg-1-fix' as StationId, due: at - hour / 2 }], at: 0, stationSince: at - 200_000, keyed: '4.50', settling: { seconds: 90, wall: at - 100_000, mono: 0, session: 'before' }, atTank: true },
})

/** What a screen says when something is not as it should be, or not here yet; and what lies over a screen. */
export const stateScenes: Record<string, Scene> = {
  'state-coming': { at, path: () => '/machine/neg-1', log, lacks: 'time' },
  'state-not-here': { at, path: () => '/machine/neg-1', log, lacks: 'file' },
  'state-fault': { at, path: () => '/round', log, lacks: 'sense' },
  'state-no-store': { at, path: now, log, trouble: 'unavailable', gate: true },
  'state-locked': { at, path: now, log, person: null, gate: true },
  'state-pin': { at, path: now, log, person: null, gate: true, press: ['Tomás Aldeia'] },
  'state-pin-wrong': { at, path: now, log, person: null, gate: true, press: ['Tomás Aldeia', '9', '9', '9', '9', 'Go on'] },
  'state-store-full': { at, path: now, log, trouble: 'full' },
  'state-store-full-check': { at, path: () => ph, log, trouble: 'full', drafts: () => keyed('4.52') },
  'state-store-lost': { at, path: () => '/station/neg-1-fix', log, trouble: 'databaseLost' },
  'state-not-saved': { at, path: () => ph, log, refuses: 'full', drafts: () => keyed('4.52'), press: ['Save reading'] },
  'state-saved': { at, path: () => ph, log, drafts: () => keyed('4.52'), press: ['Save reading'] },
  'state-saved-warn': { at, path: () => ph, log, drafts: () => keyed('4.74'), press: ['Save reading'] },
  'state-update': { at, path: now, log, update: true },
  'state-offline': { at, path: now, log, sending: waiting(5, { concern: 'warning' }) },
  'state-offline-day': { at, path: now, log, sending: waiting(27, { concern: 'alarm' }) },
  'state-offline-round': { at, path: () => '/round', log, sending: waiting(27, { concern: 'alarm' }) },
  'state-unknown-phone': { at, path: now, log, sending: waiting(3, { state: 'stopped', problem: 'unauthorised', isLasting: true }) },
  'state-refused-entry': { at, path: now, log, sending: waiting(3, { state: 'stopped', problem: 'entryRefused', isLasting: true }) },
  'state-install': { at, path: () => '/round', log, install: true, drafts: lastStep, press: ['Go on with the round', 'Save reading', 'Finish the round'] },
  'state-empty-trends': { at, path: () => '/trends', log: (it) => void it.add('plan', 5, { plan, effectiveFrom: 0 }) },
  'state-empty-bath': { at, path: () => '/response/neg-1-fix', log: (it) => void it.add('plan', 5, { plan, effectiveFrom: 0 }) },

  'sheet-second-look': { at, path: () => ph, log, drafts: () => keyed('7.92'), press: ['Save reading'] },
  'sheet-not-settled': { at, path: () => ph, log, press: ['4', 'Decimal point', '5', '2', 'Save reading'] },
  'sheet-not-done': { at, path: () => ph, log, press: ['Not done'] },
  'sheet-noted': { at, path: () => ph, log, press: ['Noted'] },
  'sheet-strip-times': { at, path: () => '/check/neg-1-strip', log, press: ['In at'] },
  'sheet-strip-file': { at, path: () => '/check/neg-1-strip', log, press: ['File or paste'] },
  'sheet-hold': { at, path: () => '/machine/neg-1', log, press: ['Hold the machine'] },
  'sheet-close-by-hand': { at, path: ({ out }) => `/exception/${out}`, log: (it) => ({ out: confirmed(it, 'neg-1-fix-ph', 4.92) }), press: ['Close by hand'] },
  'sheet-working': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (it) => ({ out: acidSeen(it) }), press: ['Show the working'] },
  'sheet-lot': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (it) => ({ out: acidSeen(it) }), press: ['Lot'] },
  'sheet-poured-other': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (it) => ({ out: acidSeen(it) }), press: ['Poured another amount', '1', '2'] },
  'sheet-caution-again': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (it) => ({ out: acidSeen(it) }), press: ['Read the caution again'] },

  'own-dose': { at, path: ({ out }) => `/exception/${out}/own`, log: (it) => ({ out: acidSeen(it) }) },
  'own-dose-asked': { at, path: ({ out }) => `/exception/${out}/own`, log: (it) => ({ out: acidSeen(it) }), press: ['Go on'] },
  'own-dose-amount': { at, path: ({ out }) => `/exception/${out}/own`, log: (it) => ({ out: acidSeen(it) }), press: ['Acetic acid 28', ['How much', '900'], ['Why this', 'Half of it, the tank stands low'], 'Go on'] },
  'own-dose-second': { at, path: ({ out }) => `/exception/${out}/own`, log: (it) => ({ out: acidSeen(it) }), press: ['Acetic acid 28', ['How much', '900'], ['Why this', 'Half of it, the tank stands low'], 'Go on', 'Poured 900'] },
  'own-dose-alone': { at, path: ({ out }) => `/exception/${out}/own`, log: (it) => ({ out: acidSeen(it) }), press: ['Acetic acid 28', ['How much', '900'], ['Why this', 'Half of it, the tank stands low'], 'Go on', 'Poured 900', 'It is poured, and nobody', 'Poured 900'] },
  'over-poured': {
    at, path: ({ out }) => `/exception/${out}`,
    log: (it) => {
      const out = acidSeen(it)
      it.add('add', 9, {
        station: 'neg-1-fix' as StationId, material: 'acetic-acid-28' as MaterialId, exception: out, portion: 1, planned: { amount: 2350, unit: 'mL' },
        poured: { amount: 4.7, unit: 'L', keyed: '4.7' }, mixSeconds: 1320, predicted: { quantity: 'pH', from: 4.92, to: 4.7 }, overruled: 'The jug was filled twice',
      })
      return { out }
    },
  },
  'top-up-caution': { at, path: ({ out }) => `/exception/${out}/${encodeURIComponent(`level:${replenisherId}`)}`, log: (it) => ({ out: confirmed(it, 'neg-1-dev-level', -30) }) },
  'top-up-held': { at, path: ({ out }) => `/exception/${out}/${encodeURIComponent(`level:${replenisherId}`)}`, log: (it) => ({ out: cautioned(it, confirmed(it, 'neg-1-dev-level', -30), replenisherId, 'developer-replenisher') }) },
  'top-up': { at, path: ({ out }) => `/exception/${out}`, log: (it) => ({ out: confirmed(it, 'neg-1-dev-level', -30) }) },
}
