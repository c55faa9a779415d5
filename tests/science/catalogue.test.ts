import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/science/catalogue.ts'
import { evaluate } from '../../src/science/evaluate.ts'
import { groupSchema } from '../../src/science/schema.ts'

/** Every number of `part` stands in `whole` within the tolerance. */
const expectWithin = (whole: unknown, part: unknown, tolerance: number, path: string): void => {
  if (typeof part === 'number') {
    expect(whole, path).toBeTypeOf('number')
    expect(Math.abs((whole as number) - part), `${path}: ${String(whole)} against ${part}`).toBeLessThanOrEqual(tolerance)
  } else if (part && typeof part === 'object') {
    for (const [key, value] of Object.entries(part)) expectWithin((whole as Record<string, unknown>)[key], value, tolerance, `${path}.${key}`)
  } else expect(whole, path).toEqual(part)
}

describe.each(catalogue.map((entry) => [entry.id, entry] as const))('%s', (_, entry) => {
  it('gives its worked example, with working, in the shape it promises', () => {
    const { result, steps } = evaluate(entry, entry.example.inputs)
    expectWithin(result, entry.example.result, entry.example.tolerance, entry.id)
    expect(groupSchema(entry.outputs).safeParse(result).error).toBeUndefined()
    expect(steps.length).toBeGreaterThan(0)
    for (const step of steps) expect(step.says).not.toBe('')
  })

  it('says where it comes from and where it holds', () => {
    for (const text of [entry.title, entry.formula, entry.source, entry.domain, entry.example.source]) expect(text.length).toBeGreaterThan(3)
  })
})

describe('the catalogue', () => {
  it('names each calculation once', () => {
    const ids = catalogue.map((entry) => entry.id)
    expect(new Set(ids).size).toBe(ids.length)
  })
})
