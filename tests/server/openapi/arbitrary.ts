import fc from 'fast-check'

export type Json = { [name: string]: unknown }

/** What no schema asked for. */
const junk: fc.Arbitrary<unknown> = fc.oneof(
  fc.jsonValue({ maxDepth: 3 }),
  fc.constantFrom<unknown>('', '../../etc', '\u0000', '💧', '<script>', "' or 1=1 --", -1, 0, 1e308, Number.MAX_SAFE_INTEGER, [], {}, null, true, 'x'.repeat(5000)),
)

/** Patterns run backwards, but for what cannot be: looking ahead, and classes of Unicode, which take a quarter of a second a string. */
const matching = (pattern: string): fc.Arbitrary<string> => {
  if (/\\p\{/i.test(pattern)) return fc.string({ minLength: 1, maxLength: 30 })
  const whole = new RegExp(pattern, 'u')
  return fc.stringMatching(new RegExp(pattern.replace(/\(\?[=!][^)]*\)/g, ''), 'u')).filter((text) => whole.test(text))
}

const fitting = (schema: Json): fc.Arbitrary<unknown> => {
  if ('const' in schema) return fc.constant(schema['const'])
  if (Array.isArray(schema['enum'])) return fc.constantFrom(...(schema['enum'] as unknown[]))
  const choices = (schema['anyOf'] ?? schema['oneOf']) as Json[] | undefined
  if (choices) return fc.oneof(...choices.map(fromSchema))
  if (Array.isArray(schema['type'])) return fc.oneof(...(schema['type'] as string[]).map((type) => fitting({ ...schema, type })))
  const least = (name: string, fallback: number): number => (typeof schema[name] === 'number' ? (schema[name] as number) : fallback)
  switch (schema['type']) {
    case 'string':
      return typeof schema['pattern'] === 'string' ? matching(schema['pattern']) : fc.string({ minLength: least('minLength', 0), maxLength: Math.min(400, least('maxLength', 60)) })
    case 'integer':
      return fc.integer({ min: Math.max(-2e9, least('minimum', -2e9)), max: Math.min(2e9, least('maximum', 2e9)) })
    case 'number':
      return fc.oneof(fc.integer(), fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }))
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    case 'array':
      return fc.array(fromSchema((schema['items'] ?? {}) as Json), { minLength: Math.min(3, least('minItems', 0)), maxLength: 4 })
    case 'object': {
      const properties = (schema['properties'] ?? {}) as Record<string, Json>
      const required = (schema['required'] ?? []) as string[]
      const known = fc.record(Object.fromEntries(Object.entries(properties).map(([name, inner]) => [name, fromSchema(inner)])), { requiredKeys: required })
      const rest = schema['additionalProperties']
      if (typeof rest !== 'object' || rest === null) return known
      return fc.tuple(known, fc.dictionary(fc.string({ maxLength: 12 }), fromSchema(rest as Json), { maxKeys: 3 })).map(([one, other]) => ({ ...other, ...one }))
    }
    default:
      return junk
  }
}

/** Values mostly as the schema has them, so that they come past the first check, and now and then anything at all, at any place in it. */
export const fromSchema = (schema: Json): fc.Arbitrary<unknown> => fc.oneof({ weight: 14, arbitrary: fitting(schema) }, { weight: 1, arbitrary: junk })
