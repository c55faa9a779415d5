import { demoLab } from '../../src/demo/lab.ts'
import { cardById } from '../../src/safety/cards.ts'
import type { CheckId, MaterialId, PersonId, StationId } from '../../src/plan/ids.ts'
import { judge } from '../../src/plan/limits.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { EntryId } from '../../src/record/ids.ts'
import type { Sending } from '../../src/ui/app-context.ts'
import type { StoreFaultCode } from '../../src/device/faults.ts'
import type { Trouble } from '../../src/ui/trouble.ts'
import { fixturePlan } from './fixture-plan.ts'
import type { Log } from './log.ts'
import { methodScenes } from './method-scenes.ts'
import { planScenes } from './plan-scenes.ts'
import { shiftScenes } from './shift-scenes.ts'
import { stateScenes } from './state-scenes.ts'
import { stripScenes } from './strip-scenes.ts'
import { trendScenes } from './trend-scenes.ts'

/** Ids of entries that a scene's address or drafts speak of. */
export type Extra = { [name: string]: EntryId }

export interface Scene {
  at: number
  path(extra: Extra): string
  log(log: Log): Extra | void | Promise<Extra | void>
  drafts?(extra: Extra): Record<string, unknown>
  person?: PersonId | null
  sending?: Sending
  trouble?: Trouble
  update?: true
  install?: true
  /** What the screen does not get: its own file yet, its own file at all, or anything to read that makes sense. */
  lacks?: 'time' | 'file' | 'sense'
  /** The store takes nothing, for this reason. */
  refuses?: StoreFaultCode
  /** With what stands between a phone and the record. */
  gate?: true
  /** Pressed in this order once the screen is drawn, each by how its name begins; a pair is a field and what is keyed into it. */
  press?: readonly (string | readonly [field: string, keyed: string])[]
}

const at = Date.parse('2026-01-14T14:06:00Z')
const demo = demoLab()

interface Told {
  plan: LabPlan
  /** Checks whose last time is left out, so that they are due or late. */
  left?: readonly string[]
  /** The last value of a check, where it matters to the scene. */
  last?: Readonly<Record<string, number>>
}

/** Machines run since the morning; every check was done in its time, near its aim. */
const ordinary = (log: Log, { plan, left = [], last = {} }: Told): EntryId => {
  const id = log.add('plan', 60 * 24 * 30, { plan, effectiveFrom: 0 }, plan.people.at(-1)!.id)
  for (const machine of plan.machines) log.add('run', 470, { machine: machine.id, state: 'running', metresPerMinute: machine.aimMetresPerMinute })
  plan.checks.forEach((check, index) => {
    const minutes = check.schedule.kind === 'interval' ? check.schedule.minutes : 300
    for (let back = 6; back >= 0; back--) {
      const minutesAgo = back * minutes + ((index * 7) % Math.max(5, minutes - 12)) + 1
      if (minutesAgo > 465 && back !== 0) continue
      if (back === 0 && left.includes(check.id)) continue
      if (check.kind === 'look') log.add('look', minutesAgo, { check: check.id, plan: id, right: true })
      if (check.kind === 'strip') {
        const figures = Object.fromEntries(check.figures.map(({ figure, limits }) => [figure, limits.aim]))
        log.add('strip', minutesAgo, { check: check.id, plan: id, densities: {}, figures, verdict: 'IN' })
      }
      if (check.kind === 'reading') {
        const { limits, step, unit } = check
        const reach = (limits.warningHigh ?? limits.aim * 1.01) - limits.aim
        const wander = Math.sin(index + back * 1.7) * 0.7 * reach
        const wanted = back === 0 && last[check.id] !== undefined ? last[check.id]! : limits.aim + (limits.warningLow === undefined && limits.warningHigh === undefined ? 0 : wander)
        const value = Number((Math.round(wanted / step) * step).toPrecision(8))
        log.add('reading', minutesAgo, { check: check.id, plan: id, value, keyed: String(value), unit, how: 'keyed', verdict: judge(limits, value).verdict })
      }
    }
  })
  return id
}

export const phOut = (log: Log, plan: EntryId, minutesAgo = 6): EntryId =>
  log.add('reading', minutesAgo, { check: 'neg-1-fix-ph' as CheckId, plan, value: 4.92, keyed: '4.92', unit: 'pH', how: 'keyed', verdict: 'ACT' })

const phConfirmed = (log: Log, plan: EntryId, minutesAgo = 6): EntryId => {
  const out = phOut(log, plan, minutesAgo)
  log.add('reading', minutesAgo - 3, { check: 'neg-1-fix-ph' as CheckId, plan, value: 4.92, keyed: '4.92', unit: 'pH', how: 'keyed', verdict: 'ACT', repeatOf: out })
  return out
}

const acid = encodeURIComponent('acid:acetic-acid-28')

const cautioned = (log: Log, out: EntryId, minutesAgo = 1): EntryId => {
  for (const card of ['acetic-acid-28', 'op-acid-dose']) {
    const it = cardById(card)!
    log.add('caution', minutesAgo, { card, version: it.version, material: 'acetic-acid-28' as MaterialId, exception: out, lines: [...it.deadliest] })
  }
  return out
}

const poured = (log: Log, out: EntryId, minutesAgo: number): EntryId => {
  cautioned(log, out, minutesAgo + 1)
  log.add('add', minutesAgo, {
    station: 'neg-1-fix' as StationId, material: 'acetic-acid-28' as MaterialId, exception: out, portion: 1, planned: { amount: 2350, unit: 'mL' },
    poured: { amount: 2.35, unit: 'L', keyed: '2.35' }, mixSeconds: 1320, predicted: { quantity: 'pH', from: 4.92, to: 4.7 },
  })
  return out
}

const now = (): string => '/now'

export const scenes: Record<string, Scene> = {
  ...shiftScenes,
  ...stripScenes,
  ...trendScenes,
  ...methodScenes,
  ...planScenes,
  ...stateScenes,
  'now-quiet': { at, path: now, log: (log) => void ordinary(log, { plan: demo }) },
  'now-out': {
    at, path: now, sending: { waiting: 3, oldestAt: at - 22 * 60_000, concern: 'none', state: 'offline', isLasting: false },
    log: (log) => {
      const plan = ordinary(log, { plan: demo, left: ['neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-rinse-flow', 'pos-2-dev-temp'], last: { 'neg-1-fix-ph': 4.58, 'pos-2-wash-flow': 19.5 } })
      phOut(log, plan)
    },
  },
  'now-fourteen': { at, path: now, log: (log) => void ordinary(log, { plan: fixturePlan, left: ['neg-dev-1-temp'] }) },
  'round-start': { at, path: () => '/round', log: (log) => void ordinary(log, { plan: demo, left: ['neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-rinse-flow', 'pos-2-dev-temp'] }) },
  'check-ph': { at, path: () => '/check/neg-1-fix-ph', log: (log) => void ordinary(log, { plan: demo, left: ['neg-1-fix-ph'] }) },
  'check-ph-keyed': {
    at, path: () => '/check/neg-1-fix-ph', log: (log) => void ordinary(log, { plan: demo, left: ['neg-1-fix-ph'] }),
    drafts: () => ({ 'check:neg-1-fix-ph': { keyed: '4.92', stationSince: at - 100_000, settling: { seconds: 90, wall: at - 50_000, mono: 0, session: 'before' }, atTank: false } }),
  },
  'check-level': { at, path: () => '/check/neg-1-dev-level', log: (log) => void ordinary(log, { plan: demo }) },
  'check-look': { at, path: () => '/check/neg-1-dev-surface', log: (log) => void ordinary(log, { plan: demo }) },
  'check-strip': { at, path: () => '/check/neg-1-strip', log: (log) => void ordinary(log, { plan: demo }) },
  'check-repeat': { at, path: () => '/check/neg-1-fix-ph', log: (log) => void phOut(log, ordinary(log, { plan: demo })) },
  'machine': { at, path: () => '/machine/neg-1', log: (log) => void ordinary(log, { plan: demo }) },
  'station': { at, path: () => '/station/neg-1-fix', log: (log) => void phOut(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } })) },
  'emergency': { at, path: () => '/emergency', log: (log) => void ordinary(log, { plan: demo }) },
  'emergency-eyes': { at, path: () => '/emergency/eyes', log: (log) => void ordinary(log, { plan: demo }) },
  'round-step': { at, path: () => '/round/neg-1', log: (log) => void ordinary(log, { plan: demo, left: ['neg-1-dev-temp', 'neg-1-dev-level', 'neg-1-rinse-flow', 'pos-2-dev-temp'] }) },
  'exception-confirm': { at, path: ({ out }) => `/exception/${out}`, log: (log) => ({ out: phOut(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } })) }) },
  'exception-refused': { at, path: ({ out }) => `/exception/${out}`, log: (log) => ({ out: phConfirmed(log, ordinary(log, { plan: demo, left: ['neg-1-fix-sulfite'], last: { 'neg-1-fix-ph': 4.58 } })) }) },
  'exception-correct': { at, path: ({ out }) => `/exception/${out}`, log: (log) => ({ out: phConfirmed(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } })) }) },
  'remedy-refused': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (log) => ({ out: phConfirmed(log, ordinary(log, { plan: demo, left: ['neg-1-fix-sulfite'], last: { 'neg-1-fix-ph': 4.58 } })) }) },
  'remedy-caution': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (log) => ({ out: phConfirmed(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } })) }) },
  'remedy-amount': { at, path: ({ out }) => `/exception/${out}/${acid}`, log: (log) => ({ out: cautioned(log, phConfirmed(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } }))) }) },
  'exception-mixing': { at, path: ({ out }) => `/exception/${out}`, log: (log) => ({ out: poured(log, phConfirmed(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } }), 30), 9) }) },
  'exception-recheck': { at, path: ({ out }) => `/exception/${out}`, log: (log) => ({ out: poured(log, phConfirmed(log, ordinary(log, { plan: demo, last: { 'neg-1-fix-ph': 4.58 } }), 60), 40) }) },
}
