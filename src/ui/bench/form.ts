import type { Field, Fields, GroupField } from '../../science/field.ts'

/** What has been keyed so far, as text, in the shape of the fields. */
export type Keyed = string | Keyed[] | { [name: string]: Keyed }
export type KeyedGroup = { [name: string]: Keyed }
/** Values by names that the person chooses, in the order in which they were keyed. */
export interface KeyedPair {
  [name: string]: Keyed
  name: string
  value: Keyed
}

/** Converts between the unit of the calculation and the one that the laboratory reads; both ways are exact inverses. */
export interface UnitAtEdge {
  shown: string
  toShown(value: number): number
  fromShown(value: number): number
}
export type EdgeUnits = (unit: string) => UnitAtEdge

export const blank = (fields: Fields, edge: EdgeUnits): KeyedGroup =>
  Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, blankField(field, edge)]))

export const blankField = (field: Field, edge: EdgeUnits): Keyed => {
  switch (field.kind) {
    case 'number':
      return field.preset === undefined ? '' : numberKeyed(field.preset, field.unit, edge)
    case 'choice':
      return field.preset ?? (field.optional ? '' : field.of.length === 1 ? field.of[0]! : '')
    case 'text':
    case 'flag':
      return ''
    case 'list':
      return plainNumbers(field) ? '' : field.optional ? [] : Array.from({ length: field.atLeast ?? 1 }, () => blankField(field.of, edge))
    case 'table':
      return field.optional ? [] : [{ name: '', value: blankField(field.of, edge) }]
    case 'group':
      return blank(field.fields, edge)
  }
}

/** A list of bare numbers is keyed or pasted as lines of text, not number by number. */
export const plainNumbers = (field: Field): boolean => field.kind === 'list' && field.of.kind === 'number'

const numberKeyed = (value: number, unit: string, edge: EdgeUnits): string => String(Number(edge(unit).toShown(value).toPrecision(10)))

/** The keyed form of given inputs: the worked example, or those of a record. */
export const filled = (field: Field, value: unknown, edge: EdgeUnits): Keyed => {
  if (value === undefined || value === null) return blankField(field, edge)
  switch (field.kind) {
    case 'number':
      return numberKeyed(value as number, field.unit, edge)
    case 'choice':
    case 'text':
      return String(value)
    case 'flag':
      return value ? 'yes' : 'no'
    case 'list': {
      const entries = value as unknown[]
      const { of } = field
      if (of.kind === 'number') return entries.map((it) => numberKeyed(it as number, of.unit, edge)).join('\n')
      return entries.map((it) => filled(of, it, edge))
    }
    case 'table':
      return Object.entries(value as object).map(([name, it]) => ({ name, value: filled(field.of, it, edge) }))
    case 'group':
      return filledGroup(field.fields, value as Record<string, unknown>, edge)
  }
}

export const filledGroup = (fields: Fields, values: Record<string, unknown>, edge: EdgeUnits): KeyedGroup =>
  Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, filled(field, values[name], edge)]))

/** What is wrong with a keyed value, by path: `points[1].minutes`. */
export type Problems = Record<string, 'empty' | 'notANumber' | 'notAChoice' | 'sameName'>

/** Inputs for the calculation, and what could not be read. Comma and point both serve as the decimal sign. */
export const readForm = (fields: Fields, keyed: KeyedGroup, edge: EdgeUnits): { inputs: Record<string, unknown>; problems: Problems } => {
  const problems: Problems = {}
  const readGroup = (group: Fields, values: KeyedGroup, path: string, oneOf: GroupField['exactlyOne']): Record<string, unknown> => {
    const inputs: Record<string, unknown> = {}
    for (const [name, field] of Object.entries(group)) {
      const alternative = oneOf?.some((set) => set.includes(name)) ?? false
      const value = read(field, values[name] ?? '', path ? `${path}.${name}` : name, alternative)
      if (value !== undefined) inputs[name] = value
    }
    return inputs
  }
  const read = (field: Field, value: Keyed, path: string, mayBeEmpty: boolean): unknown => {
    const optional = mayBeEmpty || field.optional || ('preset' in field && field.preset !== undefined)
    const missing = (): undefined => {
      if (!optional) problems[path] = 'empty'
      return undefined
    }
    switch (field.kind) {
      case 'number': {
        const text = (value as string).trim()
        if (!text) return missing()
        const number = parseNumber(text)
        if (number === undefined) problems[path] = 'notANumber'
        return number === undefined ? undefined : edge(field.unit).fromShown(number)
      }
      case 'choice': {
        if (!value) return missing()
        if (!field.of.includes(value as string)) problems[path] = 'notAChoice'
        return value
      }
      case 'text':
        return (value as string).trim() || missing()
      case 'flag':
        return value === '' ? missing() : value === 'yes'
      case 'list': {
        if (field.of.kind === 'number') {
          const unit = field.of.unit
          const words = (value as string).split(/[\s;]+/).filter(Boolean)
          if (!words.length) return missing()
          return words.map((word, index) => {
            const number = parseNumber(word)
            if (number === undefined) problems[`${path}[${index}]`] = 'notANumber'
            return edge(unit).fromShown(number ?? 0)
          })
        }
        const entries = value as Keyed[]
        if (!entries.length && field.optional) return undefined
        return entries.map((it, index) => read(field.of, it, `${path}[${index}]`, false))
      }
      case 'table': {
        const pairs = value as KeyedPair[]
        if (!pairs.length && field.optional) return undefined
        const table: Record<string, unknown> = {}
        pairs.forEach((pair, index) => {
          const name = pair.name.trim()
          if (!name) problems[`${path}[${index}].name`] = 'empty'
          else if (Object.hasOwn(table, name)) problems[`${path}[${index}].name`] = 'sameName'
          table[name] = read(field.of, pair.value, `${path}.${name}`, false)
        })
        return table
      }
      case 'group': {
        const values = value as KeyedGroup
        if (optional && everyBlank(values)) return undefined
        return readGroup(field.fields, values, path, field.exactlyOne)
      }
    }
  }
  return { inputs: readGroup(fields, keyed, '', undefined), problems }
}

const everyBlank = (values: KeyedGroup): boolean =>
  Object.values(values).every((it) => (typeof it === 'string' ? it === '' : Array.isArray(it) ? it.length === 0 : everyBlank(it)))

/** `1,5` and `1.5`; `1.234,5` is ambiguous and is refused. */
export const parseNumber = (text: string): number | undefined => {
  const plain = text.replace('−', '-').replace(',', '.')
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(plain) ? Number(plain) : undefined
}
