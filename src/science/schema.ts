import * as z from 'zod/mini'
import type { Field, Fields } from './field.ts'

type Schema = z.core.$ZodType

const numberSchema = (field: Extract<Field, { kind: 'number' }>): Schema => {
  if (field.oneOf) return z.literal([...field.oneOf])
  const checks: z.core.$ZodCheck<number>[] = []
  if (field.atLeast !== undefined) checks.push(z.minimum(field.atLeast))
  if (field.atMost !== undefined) checks.push(z.maximum(field.atMost))
  if (field.above !== undefined) checks.push(z.gt(field.above))
  if (field.below !== undefined) checks.push(z.lt(field.below))
  const plain = field.whole ? z.int() : z.number()
  const checked = checks.length ? plain.check(...checks) : plain
  return field.orNull ? z.nullable(checked) : checked
}

const bareSchema = (field: Field): Schema => {
  switch (field.kind) {
    case 'number':
      return numberSchema(field)
    case 'choice':
      return z.enum([...field.of])
    case 'text':
      return z.string()
    case 'flag':
      return field.orNull ? z.nullable(z.boolean()) : z.boolean()
    case 'list': {
      const checks: z.core.$ZodCheck<unknown[]>[] = []
      if (field.atLeast !== undefined) checks.push(z.minLength(field.atLeast))
      if (field.atMost !== undefined) checks.push(z.maxLength(field.atMost))
      return z.array(fieldSchema(field.of)).check(...checks)
    }
    case 'table':
      return z.record(z.string(), fieldSchema(field.of))
    case 'group':
      return groupSchema(field.fields)
  }
}

/** What JSON Schema says of fields of which exactly one is given. */
const alternatives = (field: Field): { allOf?: object[] } =>
  field.kind === 'group' && field.exactlyOne ? { allOf: field.exactlyOne.map((names) => ({ oneOf: names.map((name) => ({ required: [name] })) })) } : {}

/** The unit and the meaning travel with the schema, so that JSON Schema carries them. */
const fieldSchema = (field: Field): Schema => {
  const bare = bareSchema(field)
  z.globalRegistry.add(bare, { description: field.says, ...(field.kind === 'number' ? { unit: field.unit } : {}), ...alternatives(field) })
  if ('preset' in field && field.preset !== undefined) return z._default(bare, field.preset)
  return field.optional ? z.optional(bare) : bare
}

/** A zod schema of a set of fields; names it does not know are refused, so that a slip of spelling cannot pass unseen. */
export const groupSchema = (fields: Fields): z.ZodMiniObject =>
  z.strictObject(Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, fieldSchema(field)])))
