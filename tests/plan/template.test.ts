import { describe, expect, it } from 'vitest'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import { firstPlan, typicalShifts, type FirstWanted } from '../../src/plan/template/first-plan.ts'
import { typicalMaterials } from '../../src/plan/template/materials.ts'
import { withTypicalMachine } from '../../src/plan/template/machine.ts'
import { typicalStations } from '../../src/plan/template/stations.ts'
import { cardById } from '../../src/safety/cards.ts'
import { demoLab } from '../../src/demo/lab.ts'

const all = typicalStations.map(({ as }) => as)
const wanted = (stock: 'negative' | 'positive', stations: readonly string[] = all): FirstWanted => ({
  name: 'Quayside', timeZone: 'Europe/Lisbon', units: { temperature: '°C', volume: 'L', mass: 'g', length: 'm' },
  people: [{ id: 'rosa', name: 'Rosa Kern', role: 'supervisor' }], shifts: typicalShifts, emergency: { calls: [], eyewash: 'at the door', assembly: 'yard' },
  machine: { name: 'Machine 1', stock, light: 'panchromatic', gaugeMillimetres: 35, metresPerMinute: 30.48, stations },
})

describe('a machine made of typical stations', () => {
  it.each(['negative', 'positive'] as const)('makes a %s plan that holds, in which every aim is labelled a starting value with its source', (stock) => {
    const parsed = parsePlan(firstPlan(wanted(stock)))
    expect(parsed).toMatchObject({ ok: true })
    if (!parsed.ok) return
    expect(parsed.plan.machines[0]!.stations).toHaveLength(all.length)
    for (const { setBy } of parsed.plan.checks) expect(setBy).toMatchObject({ kind: 'startingValue', source: expect.stringMatching(/\w/) as string })
  })

  it.each(all)('holds with the station %s alone', (as) => expect(parsePlan(firstPlan(wanted('negative', [as])))).toMatchObject({ ok: true }))

  it('has the film in each tank for as long as the trade has it', () => {
    const plan = firstPlan(wanted('negative'))
    const developer = plan.machines[0]!.stations.find(({ kind }) => kind === 'developer')!
    expect(developer.pathMetres! / plan.machines[0]!.aimMetresPerMinute).toBeCloseTo(6.5, 2)
  })

  it('keeps headroom and circulation in proportion to the volume that was named, and aims the circulation at it', () => {
    const plan = firstPlan({ ...wanted('negative'), machine: { ...wanted('negative').machine, litres: { dev: 500 } } })
    const developer = plan.machines[0]!.stations.find(({ kind }) => kind === 'developer')!
    expect(developer.bath).toMatchObject({ litres: 500, headroomLitres: 20, circulationLitresPerMinute: 75 })
    expect(plan.checks.find(({ id }) => id === 'machine-1-dev-flow')).toMatchObject({ limits: { aim: 75 } })
    expect(parsePlan(plan)).toMatchObject({ ok: true })
  })

  it('brings no second eyewash into a house that has one, and permits the acid in the new bath as well', () => {
    const first = firstPlan(wanted('negative'))
    const { plan, machine } = withTypicalMachine(first, { ...wanted('positive').machine, name: 'Machine 2' })
    expect(parsePlan(plan)).toMatchObject({ ok: true })
    expect(plan.machines.flatMap(({ stations }) => stations).filter(({ kind }) => kind === 'room')).toHaveLength(1)
    expect(plan.materials.find(({ id }) => id === 'acetic-acid-28')!.for).toEqual(['machine-1-fix', `${machine}-fix`])
    expect(plan.materials.map(({ id }) => id)).toContain('sodium-carbonate')
  })

  it('can be added to a plan that is in use', () => expect(parsePlan(withTypicalMachine(demoLab(), wanted('negative').machine).plan)).toMatchObject({ ok: true }))

  it('names a caution card for every material', () => {
    for (const { caution } of typicalMaterials) expect(cardById(caution), caution).toBeDefined()
  })
})
