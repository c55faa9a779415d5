import type { CheckId, PersonId } from '../plan/ids.ts'
import type { Verdict } from '../plan/limits.ts'
import type { EntryId } from '../record/ids.ts'
import type { Line } from './line.ts'
import type { Projection } from './projection.ts'

/** One time that a check was done. A look that was right counts as IN, one that was not as ACT. */
export interface Mark {
  id: EntryId
  time: number
  verdict: Verdict
  /** Absent for looks and strips. */
  value?: number
  keyed?: string
  person: PersonId | null
}
export interface Skipped {
  id: EntryId
  time: number
  due: number
  reason: string
}
export interface CheckNow {
  /** Newest last, at most `keptMarks`: enough to judge plausibility and to draw a short trend. */
  recent: Mark[]
  lastGood?: Mark
  lastSkip?: Skipped
}
export type Checks = { [id: CheckId]: CheckNow }

export const keptMarks = 24

export const markOf = (line: Line): { check: CheckId; mark: Mark } | undefined => {
  const base = { id: line.id, time: line.time, person: line.person }
  if (line.kind === 'reading')
    return { check: line.data.check, mark: { ...base, verdict: line.data.verdict, value: line.data.value, keyed: line.data.keyed } }
  if (line.kind === 'look') return { check: line.data.check, mark: { ...base, verdict: line.data.right ? 'IN' : 'ACT' } }
  if (line.kind === 'strip') return { check: line.data.check, mark: { ...base, verdict: line.data.verdict } }
  return undefined
}

export const checks: Projection<Checks> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind === 'skip') {
      const check = (state[line.data.check] ??= { recent: [] })
      check.lastSkip = { id: line.id, time: line.time, due: line.data.due, reason: line.data.reason }
      return
    }
    const done = markOf(line)
    if (!done) return
    const check = (state[done.check] ??= { recent: [] })
    check.recent.push(done.mark)
    if (check.recent.length > keptMarks) check.recent.shift()
    if (done.mark.verdict !== 'ACT') check.lastGood = done.mark
  },
}
