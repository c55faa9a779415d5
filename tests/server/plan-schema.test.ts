import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { isObject } from '../../src/plan/same-value.ts'
import { labPlan } from '../../src/plan/lab-plan.ts'
import { firstPlan, typicalShifts } from '../../src/plan/template/first-plan.ts'
import { typicalStations } from '../../src/plan/template/stations.ts'
import { openServer, type TestServer } from './server.ts'

let server: TestServer
let schema: Record<string, unknown>
beforeAll(async () => {
  server = await openServer()
  const answer = await server.ask(new Request('http://lab.test/api/lab-plan.schema.json'))
  expect(answer.status).toBe(200)
  expect(answer.headers.get('content-type')).toBe('application/schema+json')
  expect(answer.headers.get('content-disposition')).toContain('lab-plan.schema.json')
  schema = (await answer.json()) as Record<string, unknown>
})
afterAll(() => server.close())

/** Ajv's strict mode also finds what a schema says twice or in vain; tuples and unions are what zod makes of them. */
const validator = () => new Ajv2020({ strict: true, allErrors: true, validateFormats: false, allowUnionTypes: true }).compile(schema)

describe('the published schema of the lab plan', () => {
  it('is JSON Schema 2020-12 by that standard’s own schema, with a name of its own', () => {
    expect(schema['$schema']).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema['$id']).toBe('urn:bathkeeper:lab-plan:1')
    expect(new Ajv2020().validateSchema(schema)).toBe(true)
  })

  it('takes the demo plan and a plan made of typical stations', () => {
    const holds = validator()
    const first = firstPlan({
      name: 'Quayside', timeZone: 'UTC', units: { temperature: '°F', volume: 'US gal', mass: 'oz', length: 'ft' }, people: [{ id: 'rosa', name: 'Rosa', role: 'supervisor' }], shifts: typicalShifts,
      emergency: { calls: [], eyewash: '', assembly: '' }, machine: { name: 'M', stock: 'positive', light: 'blueSensitive', gaugeMillimetres: 16, metresPerMinute: 20, stations: typicalStations.map(({ as }) => as) },
    })
    for (const plan of [demoLab(), first]) {
      expect(holds(JSON.parse(JSON.stringify(plan))), JSON.stringify(holds.errors)).toBe(true)
    }
  })

  it('refuses what the app’s own schema refuses, and only that: fields taken out, misspelled or of another kind, wherever they stand', () => {
    const holds = validator()
    const demo = JSON.parse(JSON.stringify(demoLab())) as unknown
    const places: (string | number)[][] = []
    const walk = (value: unknown, path: (string | number)[]): void => {
      if (path.length) places.push(path)
      if (Array.isArray(value)) value.forEach((it, index) => walk(it, [...path, index]))
      else if (isObject(value)) for (const [key, it] of Object.entries(value)) walk(it, [...path, key])
    }
    walk(demo, [])
    let refused = 0
    const arbitrary = fc.tuple(fc.constantFrom(...places), fc.constantFrom<unknown>(undefined, null, '', 'word', 'A b', -1, 0, 1e9, true, [], {}, { surprise: 1 }))
    fc.assert(
      fc.property(arbitrary, ([path, value]) => {
        const plan = structuredClone(demo)
        const at = path.slice(0, -1).reduce<unknown>((it, key) => (it as Record<string | number, unknown>)[key], plan) as Record<string | number, unknown>
        const last = path.at(-1)!
        if (value === undefined && !Array.isArray(at)) delete at[last]
        else at[last] = value ?? null
        const byApp = labPlan.safeParse(plan).success
        if (!byApp) refused++
        expect(holds(plan), `${path.join('.')} = ${JSON.stringify(value)}`).toBe(byApp)
      }),
      { numRuns: 600 },
    )
    expect(refused).toBeGreaterThan(100)
  })
})
