import type * as z from 'zod/mini'
import type { AnyCalculation, Calculation, Step } from './calculation.ts'
import type { Field, Fields, GroupField, Given, Values } from './field.ts'
import { Refusal, type RefusalCode } from './refusal.ts'
import { groupSchema } from './schema.ts'

export interface Evaluated<O extends Fields> {
  result: Values<O>
  steps: Step[]
}

const schemas = new WeakMap<AnyCalculation, z.ZodMiniObject>()

/** The zod schema of a calculation's inputs, made once. */
export const inputSchema = (it: AnyCalculation): z.ZodMiniObject => {
  const known = schemas.get(it)
  if (known) return known
  const made = groupSchema(it.inputs)
  schemas.set(it, made)
  return made
}

/**
 * Checks the inputs, runs the calculation and shows its working.
 * Throws `Refusal` with the first field that is missing, unknown or out of its range; throws an Error (a fault of ours)
 * if a calculation answers with something that is not a number.
 */
export const evaluate = <I extends Fields, O extends Fields>(it: Calculation<I, O>, given: Given<I>): Evaluated<O> => {
  const inputs = parsedInputs(it, given)
  const result = it.run(inputs)
  assertFinite(it, result)
  return { result, steps: it.steps(inputs, result) }
}

/** The result alone, for callers that show no working. */
export const resultOf = <I extends Fields, O extends Fields>(it: Calculation<I, O>, given: Given<I>): Values<O> => {
  const result = it.run(parsedInputs(it, given))
  assertFinite(it, result)
  return result
}

const parsedInputs = <I extends Fields, O extends Fields>(it: Calculation<I, O>, given: unknown): Values<I> => {
  const parsed = inputSchema(it).safeParse(given)
  if (!parsed.success) {
    // A name spelled wrong is both unknown and missing: the unknown one says what happened.
    const { issues } = parsed.error
    throw refusalOf(it.inputs, given, issues.find(({ code }) => code === 'unrecognized_keys') ?? issues[0]!)
  }
  checkExactlyOne({ kind: 'group', fields: it.inputs, says: '' }, parsed.data, '')
  return parsed.data as Values<I>
}

const refusalOf = (fields: Fields, given: unknown, issue: z.core.$ZodIssue): Refusal => {
  if (issue.code === 'unrecognized_keys') {
    const path = pathText([...issue.path, issue.keys[0]!])
    const place = fieldAt(fields, issue.path)
    const known = place && place.kind === 'group' ? place.fields : fields
    return new Refusal({ code: 'unknownField', field: path, value: issue.keys[0], allowed: `fields: ${Object.keys(known).join(', ')}` })
  }
  const field = fieldAt(fields, issue.path)
  const value = valueAt(given, issue.path)
  return new Refusal({ code: codeOf(issue, value), field: pathText(issue.path), value, allowed: field ? allowedText(field) : '' })
}

const codeOf = (issue: z.core.$ZodIssue, value: unknown): RefusalCode => {
  if (value === undefined) return 'missing'
  if (issue.code === 'too_small') return issue.origin === 'array' ? 'tooFew' : 'outOfRange'
  if (issue.code === 'too_big') return issue.origin === 'array' ? 'tooMany' : 'outOfRange'
  if (issue.code === 'invalid_value') return 'notAChoice'
  return 'wrongKind'
}

/** What a field takes, in words and units: `0 to 100 °C`. */
export const allowedText = (field: Field): string => {
  switch (field.kind) {
    case 'number': {
      const unit = field.unit === '1' ? '' : ` ${field.unit}`
      if (field.oneOf) return `one of ${field.oneOf.join(', ')}${unit}`
      const low = field.atLeast !== undefined ? `${field.atLeast}` : field.above !== undefined ? `more than ${field.above}` : ''
      const high = field.atMost !== undefined ? `${field.atMost}` : field.below !== undefined ? `less than ${field.below}` : ''
      const kind = field.whole ? 'a whole number' : 'a number'
      if (low && high) return `${kind}, ${low} to ${high}${unit}`
      if (low) return field.atLeast !== undefined ? `${kind}, ${low}${unit} or more` : `${kind}, ${low}${unit}`
      if (high) return field.atMost !== undefined ? `${kind}, ${high}${unit} or less` : `${kind}, ${high}${unit}`
      return `${kind}${unit ? ` in${unit}` : ''}`
    }
    case 'choice':
      return `one of ${field.of.join(', ')}`
    case 'text':
      return 'a text'
    case 'flag':
      return 'true or false'
    case 'list':
      return `a list${field.atLeast ? ` of ${field.atLeast}${field.atMost ? ` to ${field.atMost}` : ' or more'}` : field.atMost ? ` of at most ${field.atMost}` : ''}`
    case 'table':
      return 'values by name'
    case 'group':
      return `fields: ${Object.keys(field.fields).join(', ')}`
  }
}

const fieldAt = (fields: Fields, path: readonly PropertyKey[]): Field | undefined => {
  let here: Field = { kind: 'group', fields, says: '' }
  for (const key of path) {
    const next: Field | undefined =
      here.kind === 'group' ? here.fields[String(key)] : here.kind === 'list' || here.kind === 'table' ? here.of : undefined
    if (!next) return undefined
    here = next
  }
  return here
}

const valueAt = (given: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((here, key) => (here as Record<PropertyKey, unknown> | null | undefined)?.[key], given)

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, key) => (typeof key === 'number' ? `${text}[${key}]` : text ? `${text}.${String(key)}` : String(key)), '')

const checkExactlyOne = (group: GroupField, value: unknown, path: string): void => {
  const values = value as Record<string, unknown>
  for (const set of group.exactlyOne ?? []) {
    const given = set.filter((name) => values[name] !== undefined)
    if (given.length !== 1)
      throw new Refusal({ code: 'exactlyOne', field: path, value: given, allowed: `exactly one of ${set.join(', ')}` })
  }
  for (const [name, field] of Object.entries(group.fields)) walk(field, values[name], path ? `${path}.${name}` : name)
}

const walk = (field: Field, value: unknown, path: string): void => {
  if (value === undefined || value === null) return
  if (field.kind === 'group') checkExactlyOne(field, value, path)
  else if (field.kind === 'list') (value as unknown[]).forEach((entry, index) => walk(field.of, entry, `${path}[${index}]`))
  else if (field.kind === 'table') for (const [name, entry] of Object.entries(value as object)) walk(field.of, entry, `${path}.${name}`)
}

const assertFinite = (it: AnyCalculation, result: unknown, path = ''): void => {
  if (typeof result === 'number' && !Number.isFinite(result)) throw new Error(`${it.id} answered ${result} at ${path}`)
  if (result && typeof result === 'object')
    for (const [name, value] of Object.entries(result)) assertFinite(it, value, path ? `${path}.${name}` : name)
}
