import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonical, NotCanonical } from '../../src/record/canonical.ts'

const refused = (value: unknown): string => {
  try {
    return canonical(value)
  } catch (error) {
    if (error instanceof NotCanonical) return `${error.why} ${error.path}`
    throw error
  }
}

describe('canonical text', () => {
  it('is that of the examples of RFC 8785, sections 3.2.2 and 3.2.3', () => {
    const first = JSON.parse('{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}') as { numbers: number[] }
    // The example's 1E30 is beyond what an entry may hold.
    expect(refused(first)).toBe('unsafeInteger $.numbers.1')
    first.numbers.splice(1, 1)
    expect(canonical(first)).toBe('{"literals":[null,true,false],"numbers":[333333333.3333333,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}')
    const keys = JSON.parse('{"\\u20ac":"Euro Sign","\\r":"Carriage Return","\\ufb33":"Hebrew Letter Dalet With Dagesh","1":"One","\\ud83d\\ude00":"Emoji: Grinning Face","\\u0080":"Control","\\u00f6":"Latin Small Letter O With Diaeresis"}') as Record<string, string>
    expect(Object.values(JSON.parse(canonical(keys)) as object)).toEqual([
      'One', 'Carriage Return', 'Control', 'Latin Small Letter O With Diaeresis', 'Euro Sign', 'Emoji: Grinning Face', 'Hebrew Letter Dalet With Dagesh',
    ])
  })

  it('is what another implementation of RFC 8785 writes of any value', () => {
    const strings = fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.constantFrom('"', '\\', '\u007f', '\u2028', 'toJSON', 'é'))
    const { value } = fc.letrec((tie) => ({
      value: fc.oneof(
        { maxDepth: 6 }, strings, fc.double({ noDefaultInfinity: true, noNaN: true, min: -1e15, max: 1e15 }), fc.maxSafeInteger(), fc.boolean(), fc.constant(null),
        fc.array(tie('value'), { maxLength: 4 }), fc.dictionary(strings.filter((key) => key !== '__proto__'), tie('value'), { maxKeys: 6, noNullPrototype: true }),
      ),
    }))
    fc.assert(fc.property(value, (it) => canonical(it) === canonicalize(it)), { numRuns: 1000 })
  })

  it('is refused for what would not arrive as it was sent, and says where', () => {
    expect(refused({ a: [1, { b: Number.NaN }] })).toBe('notFinite $.a.1.b')
    expect(refused({ a: 2 ** 53 })).toBe('unsafeInteger $.a')
    expect(refused({ a: '\ud83d' })).toBe('loneSurrogate $.a')
    expect(refused({ '\ude00': 1 })).toBe('loneSurrogate $')
    expect(refused({ a: new Date(0) })).toBe('notJson $.a')
    expect(refused([undefined])).toBe('notJson $.0')
    expect(refused(JSON.parse('{"a":{"__proto__":1}}'))).toBe('forbiddenName $.a')
    const nested = (depth: number): unknown => (depth ? { a: nested(depth - 1) } : 1)
    expect(refused(nested(20))).toContain('{"a":')
    expect(refused(nested(21))).toMatch(/^tooDeep \$(\.a){21}$/)
  })

  it('leaves out what is undefined', () => {
    expect(canonical({ b: undefined, a: 1 })).toBe('{"a":1}')
  })
})
