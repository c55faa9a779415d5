import * as z from 'zod'
import { describe, expect, it } from 'vitest'
import { demoLab } from '../../src/demo/lab.ts'
import { planChanges } from '../../src/plan/changes.ts'
import { labPlan } from '../../src/plan/lab-plan.ts'
import { parsePlan } from '../../src/plan/plan-problems.ts'
import type { WrittenPlan } from '../../src/plan/written-plan.ts'
import { pathOf, pathText, withValue } from '../../src/ui/plan/at.ts'
import type { PartField, PartFields } from '../../src/ui/plan/field.ts'
import { withFreshPart } from '../../src/ui/plan/fresh-part.ts'
import { checkFields, laboratoryFields, partFields } from '../../src/ui/plan/parts.ts'
import { namedPath, placeOf } from '../../src/ui/plan/place-of.ts'
import { planFile, readPlanFile } from '../../src/ui/plan/plan-file.ts'
import { planChoices } from '../../src/ui/words/en/plan-fields.ts'
import { loadWords } from '../../src/ui/words/words.ts'

interface Schema {
  properties?: Record<string, Schema>
  required?: string[]
  items?: Schema
  oneOf?: Schema[]
  anyOf?: Schema[]
  enum?: unknown[]
  const?: unknown
  type?: string
  additionalProperties?: unknown
}
const root = z.toJSONSchema(labPlan, { io: 'input' }) as Schema
const listItem = (name: string): Schema => root.properties![name]!.items!
const machine = listItem('machines')
const variants = (schema: Schema): Schema[] => schema.oneOf ?? schema.anyOf ?? []
const kindOf = (schema: Schema): string => String(schema.properties!['kind']!.const)

/** What nobody keys: ids are made of the name, a check's kind is chosen with it, and who set an aim comes of whoever signs. */
const notKeyed = new Set(['id', 'setBy', 'kind'])
const same = (fields: PartFields, schema: Schema, at: string, apart: ReadonlySet<string> = notKeyed): string[] => {
  const wanted = Object.keys(schema.properties ?? {}).filter((name) => !apart.has(name))
  const faults = [...wanted.filter((name) => !(name in fields)).map((name) => `${at}.${name} has no field`), ...Object.keys(fields).filter((name) => !wanted.includes(name)).map((name) => `${at}.${name} is not in the plan`)]
  for (const [name, field] of Object.entries(fields)) {
    const inner = schema.properties?.[name]
    if (inner) faults.push(...sameField(field, inner, `${at}.${name}`), ...((schema.required ?? []).includes(name) === (field.optional === true) ? [`${at}.${name} is ${field.optional ? 'needed' : 'optional'}`] : []))
  }
  return faults
}
const sameField = (field: PartField, schema: Schema, at: string): string[] => {
  switch (field.kind) {
    case 'choice': {
      const values = schema.enum ?? variants(schema).map((it) => it.const)
      // A form of a substance is free text in the schema; which it may have, the calculations know.
      return schema.type === 'string' && !schema.enum ? [] : JSON.stringify([...values].sort()) === JSON.stringify([...field.of].sort()) ? [] : [`${at}: ${String(values)}`]
    }
    case 'some':
      return JSON.stringify(schema.items!.enum) === JSON.stringify(field.of) ? [] : [`${at}: ${String(schema.items!.enum)}`]
    case 'group':
      return same(field.fields, schema, at, new Set())
    case 'list':
      return same(field.of, schema.items!, at, new Set(['id']))
    case 'variant':
      return [
        ...(JSON.stringify(variants(schema).map(kindOf).sort()) === JSON.stringify(Object.keys(field.of).sort()) ? [] : [`${at}: other kinds`]),
        ...variants(schema).flatMap((it) => same(field.of[kindOf(it)] ?? {}, it, `${at}(${kindOf(it)})`)),
      ]
    case 'number':
      return schema.type === 'number' ? [] : [`${at} is ${schema.type ?? 'no number'}`]
    case 'flag':
      return schema.type === 'boolean' ? [] : [`${at} is ${schema.type ?? 'no flag'}`]
    case 'pickSome':
      return schema.type === 'array' ? [] : [`${at} is no list`]
    case 'table':
      return schema.additionalProperties ? [] : [`${at} is no table`]
    default:
      return schema.type === 'string' ? [] : [`${at} is ${schema.type ?? 'no text'}`]
  }
}

const words = await loadWords('en')
const demo: WrittenPlan = demoLab()
const problemsOf = (plan: WrittenPlan) => {
  const parsed = parsePlan(plan)
  return parsed.ok ? [] : parsed.problems
}

describe('the forms of the lab plan', () => {
  it('have every field of the plan’s schema, needed or optional as there, with its choices, and no other', () => {
    const faults = [
      ...same(laboratoryFields, { ...root, properties: Object.fromEntries(Object.keys(laboratoryFields).map((name) => [name, root.properties![name]!])) }, 'laboratory', new Set()),
      ...(['people', 'shifts', 'materials', 'methods'] as const).flatMap((list) => same(partFields[list], listItem(list), list)),
      ...same(partFields.formulas, listItem('formulas'), 'formulas', new Set(['id'])),
      ...same(partFields.cautions, listItem('cautions'), 'cautions', new Set(['id', 'version'])),
      ...same(partFields.machines, machine, 'machines', new Set(['id', 'stations'])),
      ...same(partFields.stations, machine.properties!['stations']!.items!, 'stations', new Set(['id'])),
      ...variants(listItem('checks')).flatMap((it) => same(checkFields[kindOf(it) as 'look'], it, kindOf(it))),
    ]
    expect(faults).toEqual([])
    const edited = new Set([...Object.keys(laboratoryFields), ...Object.keys(partFields), 'checks', 'format', 'version', 'demo'])
    expect(Object.keys(root.properties!).filter((name) => !edited.has(name))).toEqual([])
  })

  it('name each choice in words, where it is not written as it is spoken', () => {
    const missing: string[] = []
    const walk = (fields: PartFields): void => {
      for (const field of Object.values(fields)) {
        if (field.kind === 'choice' || field.kind === 'some') for (const value of field.of) if (/^[a-z]+[A-Z]?[a-zA-Z]*$/.test(String(value)) && !['mL', 'g', 'kg', 'm', 'ft', 'oz'].includes(String(value)) && !planChoices[field.says]?.[String(value)]) missing.push(`${field.says} ${value}`)
        if (field.kind === 'group') walk(field.fields)
        if (field.kind === 'list') walk(field.of)
        if (field.kind === 'variant') Object.entries(field.of).forEach(([kind, inner]) => { if (!planChoices[field.says]?.[kind]) missing.push(`${field.says} ${kind}`); walk(inner) })
      }
    }
    ;[laboratoryFields, ...Object.values(partFields), ...Object.values(checkFields)].forEach(walk)
    expect(missing).toEqual([])
  })

  it('call a wrong field by the part, its name and the reason, never by a path', () => {
    const index = demo.checks.findIndex(({ id }) => id === 'neg-1-fix-ph')
    const said = (value: unknown): string => {
      const plan = withValue(demo, ['checks', index, 'limits', 'actionHigh'], value)
      const [problem] = problemsOf(plan)
      const place = placeOf(plan, namedPath(plan, problem!.path), words)
      return `${place.what} › ${place.field}: ${words.plan.problem(problem!)}`
    }
    expect(said('4,x')).toBe('Fixing bath 1 · Fixing bath pH › Aim and limits › Action limit, high: This is not a number. Figures and one decimal point or comma.')
    expect(said(4.6)).toContain('Fixing bath 1 · Fixing bath pH › Aim and limits: Out of order.')
    expect(said(4.6)).toContain('4 ≤ 4.2 ≤ 4.5 ≤ 4.7 ≤ 4.6')
  })

  it.each(['people', 'shifts', 'machines', 'stations', 'checks', 'materials', 'methods', 'formulas', 'cautions'] as const)('a fresh entry of %s is in the plan, and says what it lacks by its own fields', (list) => {
    const under = { stations: 'neg-1', checks: 'neg-1-fix' }[list as 'stations']
    const { plan, id } = withFreshPart(demo, list, { name: 'Something new', by: { person: 'helena', at: '2026-01-14T15:06:00Z' }, under })
    expect(planChanges(demo, plan)).toMatchObject([{ kind: 'added' }])
    for (const problem of problemsOf(plan)) {
      const place = placeOf(plan, namedPath(plan, problem.path), words)
      expect(decodeURIComponent(place.href)).toContain(id)
      expect(place.field).not.toBe('')
    }
  })

  it('change one value and nothing else', () => {
    const plan = withValue(demo, ['machines', 0, 'stations', 4, 'bath', 'litres'], 700)
    expect(planChanges(demo, plan)).toMatchObject([{ path: ['machines', 'neg-1', 'stations', 'neg-1-fix', 'bath', 'litres'], before: 640, after: 700 }])
    expect(planChanges(demo, withValue(plan, ['machines', 0, 'stations', 4, 'bath', 'litres'], 640))).toEqual([])
  })

  it('read a place as a refusal writes it', () => {
    for (const text of ['checks[3].limits.aim', 'name', 'machines[0].stations[12].bath.constituents[1].form']) expect(pathText(pathOf(text))).toBe(text)
  })

  it('give the same bytes for the same plan, in whatever order it was read', () => {
    const text = planFile(demo)
    const again = readPlanFile(text)
    const parsed = parsePlan(again)
    expect(parsed.ok && planFile(parsed.plan)).toBe(text)
    expect(readPlanFile('{"name":')).toBeUndefined()
  })
})
