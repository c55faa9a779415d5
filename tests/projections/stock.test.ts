import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { withCount } from '../../src/plan/counted.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import type { Material } from '../../src/plan/material.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { notCovered, stockOf } from '../../src/projections/stock.ts'
import type { EntryId } from '../../src/record/ids.ts'
import { LabLog, minute } from './log.ts'

const demo = demoLab()
const start = Date.parse('2026-01-12T07:00:00Z')
const at = (minutes: number): number => start + minutes * minute
type Stock = NonNullable<Material['stock']>

const counted = (id: string, stock: Partial<Stock> = {}): LabPlan => ({
  ...demo,
  materials: demo.materials.map((it) => (it.id === id ? { ...it, stock: { amount: 20, unit: it.unit === 'mL' ? 'L' : 'kg', countedAt: new Date(at(10)).toISOString(), ...stock } } : it)),
})
const left = (log: LabLog, id: string, minutes: number) => {
  const lab = log.lab()
  return stockOf(lab.ledger, lab.state.plans, log.plan, log.plan.materials.find((it) => it.id === id)!, at(minutes))
}

describe('the stock of a material', () => {
  it('is what was counted, less what was poured since, in whatever unit that was keyed', () => {
    const log = new LabLog(counted('acetic-acid-28'), start)
    log.acid(undefined, at(5))
    const millilitres = log.acid(undefined, at(20))
    const litres = log.acid(undefined, at(30), { poured: { amount: 1.5, unit: 'L', keyed: '1.5' } })
    log.acid(undefined, at(90))
    expect(left(log, 'acetic-acid-28', 60)).toMatchObject({ counted: 20_000, taken: 3850, onHand: 16_150, unit: 'mL', entries: [millilitres, litres], isLow: false, isExpired: false })
  })

  it('follows the record: what was withdrawn was not poured, what was amended was another amount', () => {
    const log = new LabLog(counted('acetic-acid-28'), start)
    const first = log.acid(undefined, at(20))
    const second = log.acid(undefined, at(30))
    log.say({ kind: 'withdraw', data: { ref: first, why: 'not poured' }, at: at(31) })
    const add = log.lab().ledger.line(second)!.data
    log.say({ kind: 'amend', data: { ref: second, data: { ...add, poured: { amount: 500, unit: 'mL', keyed: '500' } }, why: 'misread' }, at: at(32) })
    expect(left(log, 'acetic-acid-28', 60)?.taken).toBe(500)
  })

  it('is less by what went into mixes: by the material that the formula names, or the only solid of that substance', () => {
    const formula = demo.formulas!.find(({ steps }) => steps.some(({ substance }) => substance === 'metol'))!
    const log = new LabLog(counted('metol', { amount: 1 }), start)
    const mix = log.say({ kind: 'mix', data: { plan: log.planId, formula: formula.id, litres: 100, station: 'mixing' as never }, at: at(20) })
    const station = demo.machines.flatMap(({ stations }) => stations).find(({ kind }) => kind === 'mixing')!
    const begun = log.say({ kind: 'mix', data: { plan: log.planId, formula: formula.id, litres: 100, station: station.id }, at: at(21) })
    for (const [id, minutes] of [[mix, 22], [begun, 23]] as [EntryId, number][]) log.say({ kind: 'mixStep', data: { mix: id, order: 0, substance: 'metol', amount: 50, unit: 'g' }, at: at(minutes) })
    log.say({ kind: 'mixStep', data: { mix: begun, order: 1, substance: 'sodiumSulfite', amount: 7000, unit: 'g' }, at: at(24) })
    expect(left(log, 'metol', 60)).toMatchObject({ taken: 100, onHand: 900, unit: 'g' })
  })

  it('warns at the amount at which more is ordered, after its last day, and where more was taken than counted', () => {
    const log = new LabLog(counted('acetic-acid-28', { amount: 2, least: 5, expires: '2026-01-12' }), start)
    expect(left(log, 'acetic-acid-28', 60)).toMatchObject({ isLow: true, isExpired: false })
    expect(left(log, 'acetic-acid-28', 24 * 60)).toMatchObject({ isExpired: true })
    log.acid(undefined, at(20))
    expect(left(log, 'acetic-acid-28', 60)?.onHand).toBe(-350)
  })

  it('is not spoken of where nobody counts it', () => expect(left(new LabLog(demo, start), 'acetic-acid-28', 60)).toBeUndefined())

  it('does not cover a batch that needs more than is left', () => {
    const formula = demo.formulas!.find(({ steps }) => steps.some(({ substance }) => substance === 'metol'))!
    const perLitre = formula.steps.find(({ substance }) => substance === 'metol')!.gramsPerLitre!
    const plan = counted('metol', { amount: 1 })
    const log = new LabLog(plan, start)
    const stocks = new Map([['metol', left(log, 'metol', 60)!]])
    expect(notCovered(formula, 1000 / perLitre, plan, stocks)).toEqual([])
    expect(notCovered(formula, 1001 / perLitre, plan, stocks).map(({ id }) => id)).toEqual(['metol'])
  })
})

describe('a count', () => {
  const acid = demo.materials.find(({ id }) => id === 'acetic-acid-28')!
  const now = '2026-01-12T09:00:00.000Z'
  it('that is begun has the unit of its material and the time of now', () => expect(withCount(acid, { ...acid, stock: {} as Stock }, now).stock).toEqual({ unit: 'L', countedAt: now }))
  it('is of now where another amount is keyed, and of then where only the lot is', () => {
    const before = { ...acid, stock: { amount: 20, unit: 'L', countedAt: '2026-01-10T09:00:00.000Z' } } as const
    expect(withCount(before, { ...before, stock: { ...before.stock, amount: 18 } }, now).stock?.countedAt).toBe(now)
    expect(withCount(before, { ...before, stock: { ...before.stock, lot: 'L 2207' } }, now).stock?.countedAt).toBe(before.stock.countedAt)
  })
  it('of a liquid by weight is refused', () => expect(parsePlan(counted('acetic-acid-28', { unit: 'kg' }))).toMatchObject({ ok: false, problems: [{ code: 'stockUnit', detail: 'L' }] }))
  it('with a day that is no day is refused', () => expect(parsePlan(counted('acetic-acid-28', { expires: '2026-13-40' }))).toMatchObject({ ok: false }))
  it('is part of a plan that holds', () => expect(parsePlan(counted('acetic-acid-28', { lot: 'L 2207', expires: '2027-01-31', least: 5 }))).toMatchObject({ ok: true }))
})
