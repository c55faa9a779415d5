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
  person: PersonId | null
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
  const { id, time, person } = line
  switch (line.kind) {
    case 'reading':
      return { check: line.data.check, mark: { id, time, person, verdict: line.data.verdict, value: line.data.value, keyed: line.data.keyed } }
    case 'look':
      return { check: line.data.check, mark: { id, time, person, verdict: line.data.right ? 'IN' : 'ACT' } }
    case 'strip':
      return { check: line.data.check, mark: { id, time, person, verdict: line.data.verdict } }
    default:
      return undefined
  }
}

export const checks: Projection<Checks> = {
  start: () => ({}),
  step: (state, line) => {
    if (line.kind === 'skip') {
      const check = (state[line.data.check] ??= { recent: [] })
      // A reason given later for an older gap does not stand in for the occurrence that was due since.
      if (!check.lastSkip || line.data.due >= check.lastSkip.due)
        check.lastSkip = { id: line.id, time: line.time, due: line.data.due, reason: line.data.reason, person: line.person }
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
