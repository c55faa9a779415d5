import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import type { LabPlan } from '../../src/plan/lab-plan.ts'
import { driftOver, driftsNow, type DriftNow } from '../../src/projections/drift.ts'
import { seriesOf } from '../../src/projections/series.ts'
import { cellChecksOf, silverDataOf, silverYield } from '../../src/projections/silver.ts'
import { washesNow } from '../../src/projections/wash.ts'
import { hour, LabLog } from './log.ts'

const plan = demoLab()
const start = Date.parse('2026-01-12T06:00:00Z')
const data = { efficiencyFraction: 0.85, cathodeSquareMetres: 0.5, fractionToFixer: 0.8, gramsPerSquareMetre: { negative: 5, positive: 3 } }

/** One machine alone, so that what it brings is the whole. */
const oneMachine: LabPlan = { ...plan, machines: [plan.machines[0]!] }

describe('silver plated against silver brought in', () => {
  it('20 A for 8 h at 0.85 plate 547.4 g (Faraday’s law, worked by hand)', () => {
    const found = silverYield({ plan, machines: {}, currents: [0, 4].map((at) => ({ time: start + at * hour, value: 20 })), data, from: start, to: start + 8 * hour })
    expect(found.ampereHours).toBeCloseTo(160, 9)
    expect(found.platedGrams).toBeCloseTo(547.4, 1)
    expect(found.broughtGrams).toBe(0)
  })

  it('600 m of 35 mm negative at 5 g/m², four fifths dissolved, bring 83.94 g', () => {
    const log = new LabLog(plan, start)
    log.run('neg-1', 'running', start, 10)
    const found = silverYield({ plan: oneMachine, machines: log.lab().state.machines, currents: [], data, from: start, to: start + hour })
    expect(found.metres).toBeCloseTo(600, 9)
    expect(found.broughtGrams).toBeCloseTo(83.94, 2)
  })

  it('a current counts until the next reading, four hours at most: what nobody knows is not counted', () => {
    const currents = [{ time: start - 2 * hour, value: 40 }, { time: start + hour, value: 20 }]
    const found = silverYield({ plan, machines: {}, currents, data, from: start, to: start + 12 * hour })
    expect(found.ampereHours).toBeCloseTo(40 + 4 * 20, 9)
    expect(found.knownHours).toBeCloseTo(5, 9)
  })

  it('spans add up: a shift in two halves plates and brings as much as in one', () => {
    const log = new LabLog(plan, start)
    log.run('neg-1', 'running', start, 30)
    log.run('pos-2', 'running', start + hour, 50)
    for (const at of [0, 1, 3, 5, 7]) log.reading('silver-current', 38 + at, start + at * hour)
    const { ledger, state } = log.lab()
    const { current, harvest } = cellChecksOf(plan)
    expect(current?.id).toBe('silver-current')
    expect(harvest?.id).toBe('silver-harvest')
    const span = (from: number, to: number) => silverYield({ plan, machines: state.machines, currents: seriesOf(ledger, current!.id), data: silverDataOf(plan)!, from: start + from * hour, to: start + to * hour })
    const [whole, one, two] = [span(0, 8), span(0, 3.5), span(3.5, 8)]
    expect(one.platedGrams + two.platedGrams).toBeCloseTo(whole.platedGrams, 6)
    expect(one.broughtGrams + two.broughtGrams).toBeCloseTo(whole.broughtGrams, 6)
    expect(whole.broughtGrams).toBeGreaterThan(0)
  })

  it('a plan that does not know its cell says nothing', () => {
    expect(silverDataOf({ ...plan, methods: [] })).toBeUndefined()
  })
})

describe('washing', () => {
  it('WA-1 scaled: three stages, r = 20, leave 0.00011875 of what comes in', () => {
    const log = new LabLog(plan, start)
    log.run('neg-1', 'running', start, 30.48)
    log.reading('neg-1-fix-thiosulfate', 200, start)
    // 0.8 L/m² on 30.48 m/min of film 34.975 mm wide.
    log.reading('neg-1-wash-flow', 0.8 * 30.48 * 0.034975, start)
    const [wash] = washesNow(log.lab().state, { ...oneMachine, methods: [{ ...plan.methods.find(({ id }) => id === 'wash-data')!, given: { stages: 3, carryLitresPerSquareMetre: 0.04, outGramsPerLitre: 0.02375 } }] }, start + hour)
    // The last fixing bath of this machine has no thiosulfate check of its own: its formula counts, 240 g/L.
    expect(wash!.inGramsPerLitre).toBe(240)
    expect(wash!.outGramsPerLitre / 240).toBeCloseTo(0.00011875, 7)
    expect(wash!.splitOutGramsPerLitre / 240).toBeCloseTo(0.0022191, 6)
    expect(wash!.neededLitresPerMinute).toBeGreaterThan(wash!.litresPerMinute)
  })
  it('is not guessed where no flow was read', () => {
    expect(washesNow(new LabLog(plan, start).lab().state, plan, start)).toEqual([])
  })
})

describe('drift over the coming run', () => {
  const check = plan.checks.find(({ id }) => id === 'neg-1-dev-bromide')! as DriftNow['check']
  const drift: DriftNow = {
    check: { ...check, limits: { aim: 0.5, warningHigh: 0.6, actionHigh: 0.8 } }, machine: plan.machines[0]!, litres: 600, gramsPerLitre: 0.5, replenisherGramsPerLitre: 0, consumedGramsPerMetre: -0.008,
    millilitresPerMetre: 5, metresPerMinute: 30,
  }

  it('bromide given off, 600 L, 5 mL/m, 48,000 m: 0.8626 g/L, settling at 1.6 (worked by hand)', () => {
    const found = driftOver(drift, { metres: 48_000, millilitresPerMetre: 5, density: 1 })
    expect(found.course.at(-1)!.gramsPerLitre).toBeCloseTo(0.8626, 4)
    expect(found.steadyGramsPerLitre).toBeCloseTo(1.6, 9)
  })

  it('says after how much film the warning limit is met: m = −V ÷ q · ln((C∞ − 0.6) ÷ (C∞ − 0.5))', () => {
    const { meets } = driftOver(drift, { metres: 48_000, millilitresPerMetre: 5, density: 1 })
    expect(meets).toMatchObject({ limit: 'warning', at: 0.6 })
    expect(meets!.metres).toBeCloseTo(-(600 / 0.005) * Math.log((1.6 - 0.6) / (1.6 - 0.5)), 3)
  })

  it('stands within its limits over a run that is short enough, and at the rate that is suggested', () => {
    expect(driftOver(drift, { metres: 1000, millilitresPerMetre: 5, density: 1 }).meets).toBeUndefined()
    const { suggestedMillilitresPerMetre } = driftOver(drift, { metres: 1000, millilitresPerMetre: 5, density: 1 })
    expect(suggestedMillilitresPerMetre).toBeCloseTo(16, 9)
    const held = driftOver(drift, { metres: 100_000, millilitresPerMetre: suggestedMillilitresPerMetre!, density: 1 })
    expect(held.meets).toBeUndefined()
    expect(held.course.every(({ gramsPerLitre }) => Math.abs(gramsPerLitre - 0.5) < 1e-9)).toBe(true)
  })

  it('dense film asks for more, and no rate is suggested where none would hold', () => {
    expect(driftOver(drift, { metres: 1000, millilitresPerMetre: 5, density: 1.25 }).suggestedMillilitresPerMetre).toBeCloseTo(20, 9)
    expect(driftOver({ ...drift, replenisherGramsPerLitre: 0.7 }, { metres: 1000, millilitresPerMetre: 5, density: 1 }).suggestedMillilitresPerMetre).toBeUndefined()
  })

  it('a bath that would run out is drawn to the film at which it is empty', () => {
    const wearing = { ...drift, check: { ...check, limits: { aim: 1.5, warningLow: 1.4 } }, gramsPerLitre: 1.5, consumedGramsPerMetre: 0.05, replenisherGramsPerLitre: 0 }
    const found = driftOver(wearing, { metres: 100_000, millilitresPerMetre: 0, density: 1 })
    expect(found.course.at(-1)).toEqual({ metres: 18_000, gramsPerLitre: expect.closeTo(0, 6) })
    expect(found.meets).toMatchObject({ limit: 'warning', metres: expect.closeTo(1200, 3) })
  })

  it('comes from the last analysis and the rate that was read', () => {
    const log = new LabLog(plan, start)
    log.run('neg-1', 'running', start, 30)
    log.reading('neg-1-dev-bromide', 0.72, start)
    log.reading('neg-1-rate', 0.45, start)
    expect(driftsNow(log.lab().state, plan, start + hour)).toMatchObject([{ gramsPerLitre: 0.72, litres: 1000, millilitresPerMetre: 15, metresPerMinute: 30 }])
  })
})
