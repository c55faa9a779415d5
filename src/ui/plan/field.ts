import type { FieldName } from '../words/en/plan-fields.ts'

/** Anything that stands in a plan's file, or was keyed and cannot stand there yet. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json }

/** Lists of the plan, and of the app, out of which a field picks. */
export type Source = 'stations' | 'baths' | 'checks' | 'materials' | 'methods' | 'people' | 'cards' | 'builtInCards' | 'substances' | 'calculations' | 'figures' | 'units'

interface Said {
  /** Its name and help, in the words of the plan's fields. */
  says: FieldName
  optional?: true
  /** May be left out of the file, and is asked for all the same. */
  needed?: true
}

/** How a field of the plan is shown and keyed. The schema says what is right; this says only what a person sees. */
export type PartField = Said &
  (
    | { kind: 'text'; long?: true; suggest?: Source }
    /** `unit`: that of the plan's file, shown in the laboratory's own; `ofCheck`: the unit that the check itself names. */
    | { kind: 'number'; unit?: string | { ofCheck: true } }
    | { kind: 'choice'; of: readonly (string | number)[] }
    /** An optional flag is either true or not there. */
    | { kind: 'flag' }
    | { kind: 'some'; of: readonly string[] }
    | { kind: 'pick'; from: Source }
    | { kind: 'pickSome'; from: Source }
    | { kind: 'wallTime' }
    | { kind: 'date' }
    /** Set with what it belongs to, and never keyed. */
    | { kind: 'instant' }
    | { kind: 'zone' }
    | { kind: 'group'; fields: PartFields; fresh?: Json }
    | { kind: 'list'; of: PartFields; fresh: Json }
    /** One of several shapes, told apart by its `kind`. */
    | { kind: 'variant'; of: Readonly<Record<string, PartFields>>; fresh: Readonly<Record<string, Json>> }
    /** Numbers or words by a name of their own. */
    | { kind: 'table' }
  )
export type PartFields = Readonly<Record<string, PartField>>

/** The same fields in other words: warning limits of a mix are those of a reading. */
export const fieldAt = (fields: PartFields, path: readonly string[], kindOf: (path: readonly string[]) => string | undefined): PartField[] => {
  const found: PartField[] = []
  let level: PartFields | undefined = fields
  for (let index = 0; index < path.length && level; index++) {
    const field: PartField | undefined = level[path[index]!]
    if (!field) break
    found.push(field)
    if (field.kind === 'group') level = field.fields
    else if (field.kind === 'variant') level = field.of[kindOf(path.slice(0, index + 1)) ?? '']
    else if (field.kind === 'list') {
      level = field.of
      index++
    } else level = undefined
  }
  return found
}
