import { describe, expect, it } from 'vitest'
import { responseOf, unexplained } from '../../src/corrections/response.ts'
import { appendable, arrivedFrom } from '../../src/demo/draft.ts'
import { demoHistory } from '../../src/demo/history.ts'
import { demoLab } from '../../src/demo/lab.ts'
import { dueChecks } from '../../src/projections/due.ts'
import { openExceptions } from '../../src/projections/exceptions.ts'
import { Lab } from '../../src/projections/lab.ts'
import { standingHolds } from '../../src/projections/holds.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { kinds } from '../../src/record/kinds.ts'
import { idOf, LabLog, phone } from '../projections/log.ts'

const plan = demoLab()
const until = Date.parse('2026-01-13T10:20:00Z')
const planEntry = idOf(1)
const told = demoHistory({ seed: 7, plan, planEntry, until })

const folded = (history = told): Lab => {
  const log = new LabLog(plan, history[0]!.time - 1)
  const lab = new Lab()
  lab.add([...log.arrived, ...arrivedFrom(history, phone('d'))])
  return lab
}

const hours = Array.from({ length: 24 }, (_, hour) => hour)

describe('the demo’s past shifts', () => {
  it('are the same for the same seed, and others for another', () => {
    expect(demoHistory({ seed: 7, plan, planEntry, until })).toEqual(told)
    expect(demoHistory({ seed: 8, plan, planEntry, until })).not.toEqual(told)
  })

  it('are entries that the record takes', () => {
    for (const { kind, data } of told) expect(kinds[kind].safeParse(data).error, kind).toBeUndefined()
  })

  it('lie in order, in three whole shifts and the one that runs, and end before now', () => {
    const times = told.map(({ time }) => time)
    expect([...times].sort((a, b) => a - b)).toEqual(times)
    expect(times[0]).toBeGreaterThanOrEqual(Date.parse('2026-01-12T06:00:00Z'))
    expect(times.at(-1)).toBeLessThanOrEqual(until)
  })

  it.each([1, 2, 3, 4, 5])('hold an acid dose with caution, mixing time and re-check, a water dose, a hold that was released, and strips (seed %i)', (seed) => {
    const history = demoHistory({ seed, plan, planEntry, until })
    const kindsTold = new Set(history.map(({ kind }) => kind))
    for (const kind of ['run', 'reading', 'look', 'strip', 'skip', 'add', 'caution', 'hold', 'release', 'note', 'handover'] as const) expect(kindsTold).toContain(kind)
    const acid = history.find((draft) => draft.kind === 'add' && draft.data.material !== 'water')
    if (acid?.kind !== 'add') throw new Error('no acid was given')
    expect(history.some((draft) => draft.kind === 'caution' && draft.id === acid.data.caution && draft.time < acid.time)).toBe(true)
    // 640 L at 160 L/min: three turnovers are 12 minutes.
    expect(acid.data.mixSeconds).toBe(720)
  })

  it('leave no exception and no hold behind, but rounds that wait', () => {
    const lab = folded()
    expect(openExceptions(lab.state.exceptions)).toEqual([])
    expect(standingHolds(lab.state.holds)).toEqual([])
    const due = dueChecks(lab.state, plan, until)
    expect(due.filter(({ status }) => status !== 'ahead').length).toBeGreaterThan(5)
  })

  it.each(hours)('leave nothing open at whatever hour they are founded (%i h later), and no answer of a bath that nobody can explain', (hour) => {
    const now = until + hour * 3_600_000
    const { state } = folded(demoHistory({ seed: 7, plan, planEntry, until: now, shifts: 1 }))
    expect(openExceptions(state.exceptions)).toEqual([])
    expect(standingHolds(state.holds)).toEqual([])
    for (const { id: material, for: stations } of plan.materials) for (const station of stations) expect(unexplained(state, plan, { station, material, now })).toBeUndefined()
  })

  it.each(hours)('have an acid dose that was answered, at whatever hour they are founded (%i h later)', (hour) => {
    const now = until + hour * 3_600_000
    const { state } = folded(demoHistory({ seed: 7, plan, planEntry, until: now, shifts: 1 }))
    const material = plan.materials.find(({ id }) => id === 'acetic-acid-28')!
    expect(responseOf(state, plan, { station: material.for[0]!, material: material.id, now, resets: [] }).history.length).toBeGreaterThan(0)
  })

  it('have sulfite found in limits within its day, so that acid may be offered', () => {
    const mark = folded().state.checks['neg-1-fix-sulfite' as keyof object] as { recent: { time: number; verdict: string }[] } | undefined
    expect(mark?.recent.at(-1)?.verdict).toBe('IN')
    expect(until - mark!.recent.at(-1)!.time).toBeLessThan(24 * 3_600_000)
  })

  it('can be appended now, each with the time at which it was noted and naming what the earlier ones became', () => {
    const became = new Map<EntryId, EntryId>()
    told.forEach((draft, index) => {
      const { kind, data } = appendable(draft, became)
      expect(kinds[kind].safeParse(data).success).toBe(true)
      became.set(draft.id, idOf(1000 + index))
    })
    const add = told.find((draft) => draft.kind === 'add' && draft.data.exception)!
    const { data } = appendable(add, became)
    expect(data).toMatchObject({ notedAt: new Date(add.time).toISOString(), exception: became.get((add.data as { exception: EntryId }).exception) })
  })
})
