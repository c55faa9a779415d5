import { appendable } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import type { CheckId, PersonId } from '../../src/plan/ids.ts'
import type { StripCheck } from '../../src/plan/check.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { stripData } from '../../src/rounds/strip/strip-data.ts'
import type { Log } from './log.ts'
import type { Scene } from './scenes.ts'

const at = Date.parse('2026-01-14T14:06:00Z')
const plan = demoLab()
const check = plan.checks.find((it): it is StripCheck => it.id === 'neg-1-strip')!

/** What the invented laboratory did in the last shifts. */
export const past = (log: Log, shifts = 3): EntryId => {
  const planEntry = log.add('plan', 60 * 24 * 30, { plan, effectiveFrom: 0 }, 'helena' as PersonId)
  const became = new Map<EntryId, EntryId>()
  for (const draft of demoHistory({ seed: 7, plan, planEntry, until: at, shifts })) {
    const { kind, data } = appendable(draft, became)
    became.set(draft.id, log.add(kind, (at - draft.time) / 60_000, data, draft.person))
  }
  return planEntry
}

/** A strip made from the last one, with every density above fog stretched: more or less development. */
export const stretched = (log: Log, planEntry: EntryId, share: number, minutesAgo = 1, repeatOf?: EntryId): EntryId => {
  const lines = log.entries.filter(({ entry }) => entry.kind === 'strip' && entry.data['check'] === check.id)
  const last = lines[0]!.entry.data as { densities: Record<string, { value: number; keyed: string }>; batch: string }
  const batch = log.entries.find(({ entry }) => entry.kind === 'stripBatch' && entry.data['check'] === check.id)!.entry.data as { aims: Record<string, number> }
  const densities = Object.fromEntries(
    Object.entries(last.densities).map(([step, { value }]) => {
      const keyed = (0.25 + (value - 0.25) * share).toFixed(2)
      return [step, { value: Number(keyed), keyed }]
    }),
  )
  const iso = (ago: number): string => new Date(at - ago * 60_000).toISOString()
  return log.add('strip', minutesAgo, { check: 'neg-1-strip' as CheckId, plan: planEntry, ...(repeatOf ? { repeatOf } : {}), ...stripData(check, { densities, batch: last.batch, stripIn: iso(minutesAgo + 29), bathTime: iso(minutesAgo + 24) }, batch.aims) })
}

const keyed = ['0.25', '0.25', '0.25', '0.26', '0.29', '0.34', '0.41', '0.50', '0.59', '0.69', '0.79', '0.', ...Array.from({ length: 9 }, () => '')]

export const stripScenes: Record<string, Scene> = {
  'strip-keying': { at, path: () => '/check/neg-1-strip', log: (log) => void past(log), drafts: () => ({ 'strip:neg-1-strip': { keyed } }) },
  'strip-empty': { at, path: () => '/check/neg-1-strip', log: (log) => void past(log) },
  'strip-last': { at, path: () => '/strip/neg-1-strip', log: (log) => void past(log) },
  'strip-out': { at, path: () => '/strip/neg-1-strip', log: (log) => ({ out: stretched(log, past(log), 1.08) }) },
  'strip-exception': {
    at, path: ({ out }) => `/exception/${out}`,
    log: (log) => {
      const planEntry = past(log)
      // After the last one of the invented shifts, which would refute it.
      const out = stretched(log, planEntry, 1.08, 1.5)
      stretched(log, planEntry, 1.09, 0.5, out)
      return { out }
    },
  },
}
