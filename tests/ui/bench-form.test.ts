import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/science/catalogue.ts'
import { evaluate } from '../../src/science/evaluate.ts'
import { blank, filledGroup, parseNumber, readForm, type EdgeUnits } from '../../src/ui/bench/form.ts'

const plain: EdgeUnits = (unit) => ({ shown: unit, toShown: (value) => value, fromShown: (value) => value })

describe('the form of a calculation', () => {
  it.each(catalogue.map((it) => [it.id, it] as const))('%s: the worked example, keyed into the form, gives the worked result', (_, it) => {
    const { inputs, problems } = readForm(it.inputs, filledGroup(it.inputs, it.example.inputs, plain), plain)
    expect(problems).toEqual({})
    expect(evaluate(it, inputs).result).toEqual(evaluate(it, it.example.inputs).result)
  })

  it.each(catalogue.map((it) => [it.id, it] as const))('%s: an empty form says what is missing and never falls over', (_, it) => {
    const { problems } = readForm(it.inputs, blank(it.inputs, plain), plain)
    for (const problem of Object.values(problems)) expect(['empty', 'notAChoice']).toContain(problem)
  })

  it('reads comma and point alike, and refuses what could mean two things', () => {
    expect(parseNumber('4,92')).toBe(4.92)
    expect(parseNumber('−0.5')).toBe(-0.5)
    for (const text of ['1.234,5', '4..9', '', '-', 'e5', '0x10', 'NaN', 'Infinity', '1 2']) expect(parseNumber(text), text).toBeUndefined()
  })

  it('reads back every number that it prints', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => parseNumber(String(value)) === value || Object.is(value, -0)))
  })
})
