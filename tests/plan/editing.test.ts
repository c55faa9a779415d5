import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { planChanges } from '../../src/plan/changes.ts'
import { copyMachine } from '../../src/plan/copy-machine.ts'
import { mergePlans } from '../../src/plan/merge-plans.ts'
import { newId, wordOf } from '../../src/plan/new-id.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { withSetBy } from '../../src/plan/set-by.ts'
import { without } from '../../src/plan/without.ts'
import type { WrittenPlan } from '../../src/plan/written-plan.ts'

const demo: WrittenPlan = demoLab()
const changed = (change: (plan: WrittenPlan) => void): WrittenPlan => {
  const plan = structuredClone(demo)
  change(plan)
  return plan
}
const reading = (plan: WrittenPlan, id: string) => {
  const check = plan.checks.find((it) => it.id === id)
  if (check?.kind !== 'reading') throw new Error(`no reading ${id}`)
  return check
}
const by = { person: 'helena', at: '2026-01-14T15:06:00+00:00' }

describe('a copied machine', () => {
  const { plan, machine } = copyMachine(demo, 'neg-1', 'Negative machine 3')
  const copy = plan.machines.find(({ id }) => id === machine)!

  it('is a plan that holds, with ids of its own throughout', () => {
    expect(parsePlan(plan)).toMatchObject({ ok: true })
    expect(machine).toBe('negative-machine-3')
    expect(copy.name).toBe('Negative machine 3')
  })
  it('has the same stations along the film and their checks, but no second silver cell, mixing room or instrument bench', () => {
    const film = demo.machines[0]!.stations.filter(({ kind }) => !['silverCell', 'mixing', 'instruments'].includes(kind))
    expect(copy.stations.map(({ name }) => name)).toEqual(film.map(({ name }) => name))
    const count = (of: WrittenPlan, stations: readonly string[]): number => of.checks.filter(({ station }) => stations.includes(station)).length
    expect(count(plan, copy.stations.map(({ id }) => id))).toBe(count(demo, film.map(({ id }) => id)))
  })
  it('pairs its own readings with each other', () => expect(reading(plan, `${machine}-dev-level`).pairedWith).toBe(`${machine}-dev-sg`))
  it('may take the same materials', () => expect(plan.materials.find(({ id }) => id === 'acetic-acid-28')!.for).toContain(`${machine}-fix`))
  it('changes nothing else: the differences are one machine, its checks and what may be added to its baths', () => {
    for (const change of planChanges(demo, plan)) expect(change.kind === 'added' || change.path[0] === 'materials').toBe(true)
  })
})

describe('what is taken out of a plan', () => {
  it('takes with it what cannot stand alone, and leaves a plan that holds', () => {
    const plan = without(demo, 'machines', 'pos-2')
    expect(parsePlan(plan).ok ? [] : parsePlan(plan)).toMatchObject({ ok: false, problems: [{ code: 'unknownId', path: expect.stringMatching(/^formulas/) as string }] })
    expect(plan.checks.some(({ station }) => station.startsWith('pos-2'))).toBe(false)
    expect(plan.materials.some(({ for: stations }) => stations.some((id) => id.startsWith('pos-2')))).toBe(false)
  })
  it('is forgotten by what was paired with it', () => {
    const plan = without(demo, 'checks', 'neg-1-dev-temp')
    expect(parsePlan(plan)).toMatchObject({ ok: true })
    expect(reading(plan, 'neg-1-dev-controller')).not.toHaveProperty('pairedWith')
    expect(reading(plan, 'neg-1-dev-controller')).not.toHaveProperty('pairedWithin')
  })
  it('is forgotten by checks, formulas and the duty', () => {
    for (const plan of [without(demo, 'methods', 'sulfite'), without(demo, 'materials', 'acetic-acid-28'), without(changed((it) => it.people.push({ id: 'rui', name: 'Rui', role: 'supervisor' })), 'people', 'helena')])
      expect(parsePlan(plan)).toMatchObject({ ok: true })
    expect(without(demo, 'people', 'helena')).not.toHaveProperty('onCall')
  })
})

describe('who set an aim', () => {
  it('is whoever changed what the reading is judged by, with the time', () => {
    const after = withSetBy(demo, changed((it) => { reading(it, 'neg-1-fix-ph').limits.actionHigh = 4.9 }), by)
    expect(reading(after, 'neg-1-fix-ph').setBy).toEqual({ kind: 'laboratory', ...by })
    expect(parsePlan(after)).toMatchObject({ ok: true })
  })
  it('stays a starting value where only the interval or the name was changed', () => {
    const after = withSetBy(demo, changed((it) => { reading(it, 'neg-1-fix-ph').name = 'pH'; reading(it, 'neg-1-fix-ph').schedule = { kind: 'interval', minutes: 60, graceMinutes: 5 } }), by)
    expect(reading(after, 'neg-1-fix-ph').setBy.kind).toBe('startingValue')
  })
  it('is kept as a file tells it', () => {
    const told = { kind: 'laboratory' as const, person: 'tomas', at: '2025-06-01T08:00:00+00:00' }
    const after = withSetBy(demo, changed((it) => { reading(it, 'neg-1-fix-ph').limits.aim = 4.4; reading(it, 'neg-1-fix-ph').setBy = told }), by)
    expect(reading(after, 'neg-1-fix-ph').setBy).toEqual(told)
  })
})

describe('the differences of two plans', () => {
  it('of a plan and itself are none, in whatever order its keys stand', () => {
    expect(planChanges(demo, JSON.parse(JSON.stringify(demo)))).toEqual([])
    expect(planChanges(demo, Object.fromEntries(Object.entries(demo).reverse()))).toEqual([])
  })
  it('name each field by what it belongs to', () => {
    const after = changed((it) => { reading(it, 'neg-1-fix-ph').limits.actionHigh = 4.9; it.machines[0]!.stations[2]!.bath!.constituents[0]!.gramsPerLitre = 2; delete reading(it, 'neg-1-dev-temp').holdAbove })
    expect(planChanges(demo, after)).toEqual([
      { path: ['machines', 'neg-1', 'stations', 'neg-1-dev', 'bath', 'constituents', 'metol', 'gramsPerLitre'], kind: 'changed', before: 1.5, after: 2 },
      { path: ['checks', 'neg-1-dev-temp', 'holdAbove'], kind: 'removed', before: 21.5, after: undefined },
      { path: ['checks', 'neg-1-fix-ph', 'limits', 'actionHigh'], kind: 'changed', before: 4.8, after: 4.9 },
    ])
  })
  it('say what came, what went and what stands elsewhere, as one line each', () => {
    const after = changed((it) => { it.people.push({ id: 'rui', name: 'Rui', role: 'operator' }); it.people.shift(); it.shifts.reverse() })
    expect(planChanges(demo, after).map(({ path, kind }) => `${kind} ${path.join('/')}`)).toEqual(['removed people/marta', 'added people/rui', 'order shifts'])
  })
})

describe('two who changed the plan at once', () => {
  it('both keep what they changed, down to two fields of one check', () => {
    const mine = changed((it) => { reading(it, 'neg-1-fix-ph').limits.actionHigh = 4.9; it.people.push({ id: 'rui', name: 'Rui', role: 'operator' }) })
    const theirs = changed((it) => { reading(it, 'neg-1-fix-ph').limits.actionLow = 3.9; it.people.push({ id: 'ana', name: 'Ana', role: 'operator' }); it.name = 'Harbour' })
    const { plan, both } = mergePlans(demo, mine, theirs)
    expect(both).toEqual([])
    expect(reading(plan, 'neg-1-fix-ph').limits).toMatchObject({ actionLow: 3.9, actionHigh: 4.9 })
    expect(plan.people.map(({ id }) => id)).toEqual(['marta', 'tomas', 'helena', 'rui', 'ana'])
    expect(plan.name).toBe('Harbour')
  })
  it('are told where they changed the same field; the one who is signing sees their own value', () => {
    const { plan, both } = mergePlans(demo, changed((it) => { it.name = 'A' }), changed((it) => { it.name = 'B' }))
    expect([plan.name, both]).toEqual(['A', ['name']])
  })
  it('do not bring back what either took out', () => {
    const { plan } = mergePlans(demo, without(demo, 'people', 'marta'), without(demo, 'people', 'tomas'))
    expect(plan.people.map(({ id }) => id)).toEqual(['helena'])
  })
  it('with one side unchanged end where the other stands', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: demo.checks.length - 1 }), fc.string({ minLength: 1, maxLength: 20 }), (index, name) => {
        const other = changed((it) => { it.checks[index]!.name = name })
        expect(planChanges(mergePlans(demo, demo, other).plan, other)).toEqual([])
        expect(planChanges(mergePlans(demo, other, demo).plan, other)).toEqual([])
      }),
      { numRuns: 30 },
    )
  })
})

describe('an id from a name', () => {
  it.each([['Fixing bath 1', 'fixing-bath-1'], ['  Größe & Äther ', 'grosse-ather'], ['Tomás', 'tomas'], ['漢字', ''], ['---', '']])('%s', (name, word) => expect(wordOf(name)).toBe(word))
  it('is one that is free', () => expect(newId('Fixing', new Set(['fixing', 'fixing-2']), 'x')).toBe('fixing-3'))
  it('is never a word that every object has', () => expect(newId('constructor', new Set(), 'x')).toBe('constructor-2'))
  it('is made of a fallback where the name has no letter', () => expect(newId('漢字', new Set(['station']), 'station')).toBe('station-2'))
})
