import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { checkOf, placeOf } from '../../src/plan/find.ts'
import type { CheckId, MachineId, StationId } from '../../src/plan/ids.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { withFormer } from '../../src/plan/with-former.ts'
import { without, type ListName } from '../../src/plan/without.ts'
import { coverage } from '../../src/projections/coverage.ts'
import { openExceptions } from '../../src/projections/exceptions.ts'
import { answerableExceptions, leftBehind } from '../../src/projections/left-behind.ts'
import { wouldLeaveBehind } from '../../src/projections/would-leave-behind.ts'
import { readingPlan } from '../../src/projections/reading-plan.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import { walkDown } from '../../src/projections/walk-down.ts'
import { callsAt } from '../../src/rounds/calls.ts'
import { walks } from '../../src/rounds/walk.ts'
import { nextThing } from '../../src/ui/now/next-thing.ts'
import { firstWords } from '../../src/ui/words/words.ts'
import { LabLog, minute } from './log.ts'

const plan = demoLab()
const start = Date.parse('2026-01-12T07:00:00Z')
const at = (minutes: number): number => start + minutes * minute

const less = (list: ListName, id: string): LabPlan => {
  const parsed = parsePlan(without(plan, list, id))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  return parsed.plan
}
/** A machine that runs, an exception of its fixing bath in which acid mixes, and a hold. */
const troubled = (): LabLog => {
  const log = new LabLog(plan, start - 60 * minute)
  log.run('neg-1', 'running', at(0), 30.48)
  const out = log.reading('neg-1-fix-ph', 4.92, at(5))
  log.reading('neg-1-fix-ph', 4.92, at(6), { repeatOf: out })
  log.acid(out, at(8))
  log.say({ kind: 'hold', data: { machine: 'neg-1' as MachineId, reason: 'Scratch' }, at: at(9) })
  return log
}
const revise = (log: LabLog, to: LabPlan, minutes: number): void => void log.say({ kind: 'plan', data: { plan: to, effectiveFrom: at(minutes) }, at: at(minutes), person: 'helena' })
const whats = (log: LabLog, changed: LabPlan, minutes: number): string[] => wouldLeaveBehind(log.lab(), plan, changed, at(minutes)).map(({ what }) => what)

// A part that the demo laboratory's formulas need cannot be taken out of it alone.
const bare: LabPlan = { ...plan, formulas: [] }
const bareWithout = (list: ListName, id: string): LabPlan => without(bare, list, id) as LabPlan

describe('what a revision would leave behind', () => {
  it('is named before a machine, a station, a check or a material is taken out', () => {
    const log = troubled()
    expect(whats(log, bareWithout('machines', 'neg-1'), 10)).toEqual(['machine', 'hold', 'exception'])
    expect(whats(log, bareWithout('stations', 'neg-1-fix'), 10)).toEqual(['exception'])
    expect(whats(log, bareWithout('checks', 'neg-1-fix-ph'), 10)).toEqual(['exception'])
    expect(whats(log, bareWithout('materials', 'acetic-acid-28'), 10)).toEqual(['exception'])
    expect(whats(log, bareWithout('materials', 'acetic-acid-28'), 60)).toEqual([])
    expect(whats(log, bareWithout('checks', 'neg-1-dev-temp'), 10)).toEqual([])
    expect(whats(log, bareWithout('machines', 'pos-2'), 10)).toEqual([])
  })

  it('is an add without exception while it mixes, and a batch that is being made', () => {
    const log = new LabLog(plan, start - 60 * minute)
    log.acid(undefined, at(1))
    const formula = plan.formulas![0]!
    const station = plan.machines.flatMap(({ stations }) => stations).find(({ kind }) => kind === 'mixing')!
    log.say({ kind: 'mix', data: { plan: log.planId, formula: formula.id, litres: 20, station: station.id }, at: at(2) })
    expect(whats(log, bareWithout('stations', 'neg-1-fix'), 5)).toEqual(['mixing', 'batch'])
    expect(whats(log, { ...plan, formulas: plan.formulas!.filter((it) => it !== formula) }, 5)).toEqual(['batch'])
  })

  it('is nothing that was left behind before: a plan can be mended afterwards', () => {
    const log = troubled()
    const changed = less('checks', 'neg-1-fix-ph')
    revise(log, changed, 12)
    expect(wouldLeaveBehind(log.lab(), changed, { ...changed, name: 'Another name' }, at(13))).toEqual([])
  })
})

describe('after a revision that came all the same', () => {
  // Each part in turn, and everything that a page works out of the record.
  const cases: [ListName, string][] = [['machines', 'neg-1'], ['stations', 'neg-1-fix'], ['checks', 'neg-1-fix-ph'], ['materials', 'acetic-acid-28'], ['people', 'marta'], ['shifts', plan.shifts[0]!.id]]
  it.each(cases)('without one of its %s every page still says what happened', (list, id) => {
    const log = troubled()
    const changed = bareWithout(list, id)
    revise(log, changed, 12)
    const lab = log.lab()
    const now = at(14)
    expect(lab.plan(now)?.plan).toEqual(changed)
    for (const inForce of [plan, changed]) {
      const span = shiftAt(inForce, at(1))
      const page = shiftPage({ lab, plan: inForce, span, now })
      expect(page.exceptions).toHaveLength(1)
      expect(page.holds).toHaveLength(1)
      expect(page.blockers.map(({ code }) => code)).toEqual(expect.arrayContaining(['holdOpen', 'exceptionOpen']))
      const known = readingPlan(lab.state.plans, inForce)
      for (const { exception } of page.exceptions) expect([checkOf(known, exception.check).name, placeOf(known, exception.station).machine.name]).toEqual(['Fixing bath pH', 'Negative machine 1'])
      for (const add of page.adds) expect(known.materials.map((it) => it.id)).toContain(add.material)
      expect(known.people.map((it) => it.id)).toContain('marta')
    }
    expect(walkDown(lab, changed, now).map(({ what }) => what)).toContain('exception')
    expect(nextThing(lab.state, changed, undefined, now, firstWords, () => now).label).toEqual(expect.any(String))
    expect(callsAt(lab.state, changed, at(60)).calls.every(({ check }) => changed.checks.some((it) => it.id === check))).toBe(true)
    expect(walks(lab.state, changed, now).every(({ machine }) => changed.machines.includes(machine))).toBe(true)
    expect(coverage(lab, changed, shiftAt(changed, now), now).occurrences.every(({ check }) => changed.checks.some((it) => it.id === check))).toBe(true)
    // The open exception is answered where it stands, or shown as left behind: never both, and never neither.
    expect(answerableExceptions(lab.state, changed).length + leftBehind(lab.state, changed).exceptions.length).toBe(1)
    expect(leftBehind(lab.state, changed).holds).toHaveLength(list === 'machines' ? 1 : 0)
  })

  it('what was left behind can be closed and released, and is then gone', () => {
    const log = troubled()
    const changed = bareWithout('machines', 'neg-1')
    revise(log, changed, 12)
    const before = log.lab()
    const { exceptions, holds } = leftBehind(before.state, changed)
    log.say({ kind: 'close', data: { exception: exceptions[0]!.id, reason: 'other', remark: 'Machine sold' }, at: at(20), person: 'helena' })
    log.say({ kind: 'release', data: { hold: holds[0]!.id, reason: 'Machine sold' }, at: at(21), person: 'helena' })
    const after = log.lab()
    expect(leftBehind(after.state, changed)).toEqual({ exceptions: [], holds: [] })
    expect(openExceptions(after.state.exceptions)).toEqual([])
  })

  it('a reading of a check that is no longer there is kept and opens nothing', () => {
    const log = troubled()
    const changed = bareWithout('checks', 'neg-1-wash-flow')
    revise(log, changed, 12)
    const revision = log.lab().state.plans.revisions.at(-1)!.id
    log.say({ kind: 'reading', data: { ...log.readingData('neg-1-wash-flow', 1), plan: revision, verdict: 'ACT' }, at: at(15) })
    const lab = log.lab()
    expect(lab.ledger.lines.some((line) => line.kind === 'reading' && line.data.check === 'neg-1-wash-flow')).toBe(true)
    expect(openExceptions(lab.state.exceptions).map(({ check }) => check)).toEqual(['neg-1-fix-ph'])
  })
})

describe('a plan for reading', () => {
  it('is the plan itself where nothing is lacking', () => expect(withFormer(plan, [plan])).toBe(plan))

  it('has a station where it stands now, not where it stood once', () => {
    const station = plan.machines[0]!.stations.find(({ id }) => id === 'neg-1-fix')!
    const moved: LabPlan = {
      ...plan,
      machines: plan.machines.map((machine, index) => ({ ...machine, stations: index === 0 ? machine.stations.filter((it) => it !== station) : index === 1 ? [...machine.stations, station] : machine.stations })),
    }
    const known = withFormer(moved, [plan])
    expect(known.machines.flatMap(({ stations }) => stations.filter(({ id }) => id === 'neg-1-fix'))).toHaveLength(1)
    expect(placeOf(known, 'neg-1-fix' as StationId).machine.id).toBe(plan.machines[1]!.id)
  })

  it('shows what went away as it last stood', () => {
    const renamed: LabPlan = { ...plan, checks: plan.checks.map((check) => (check.id === 'neg-1-fix-ph' ? { ...check, name: 'pH of the first fixing bath' } : check)) }
    const known = withFormer(bareWithout('checks', 'neg-1-fix-ph'), [renamed, plan])
    expect(checkOf(known, 'neg-1-fix-ph' as CheckId).name).toBe('pH of the first fixing bath')
  })
})
