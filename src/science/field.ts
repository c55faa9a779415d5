/**
 * What a calculation takes and gives, described as data. The catalogue makes zod and JSON Schema of it, Bench makes a form,
 * refusals read their ranges from it. Every number says its unit in UCUM's printed form (`°C`, `g/L`, `1` for a ratio).
 */
interface Described {
  /** Meaning, in the trade's words. */
  says: string
  optional?: boolean
}

export interface NumberField extends Described {
  kind: 'number'
  unit: string
  /** The output that says which of the units it is. */
  unitIn?: string
  atLeast?: number
  atMost?: number
  /** Open ends: the limit itself is not allowed. */
  above?: number
  below?: number
  whole?: boolean
  /** The only numbers it takes, such as the gauges of film. */
  oneOf?: readonly number[]
  /** The answer can be "cannot be said". */
  orNull?: boolean
  preset?: number
}

export interface ChoiceField<T extends string = string> extends Described {
  kind: 'choice'
  of: readonly T[]
  preset?: T
}

export interface TextField extends Described {
  kind: 'text'
}

export interface FlagField extends Described {
  kind: 'flag'
  orNull?: boolean
}

export interface ListField extends Described {
  kind: 'list'
  of: Field
  atLeast?: number
  atMost?: number
}

export interface GroupField extends Described {
  kind: 'group'
  fields: Fields
  /** Of each of these sets exactly one field is given. */
  exactlyOne?: readonly (readonly string[])[]
}

/** Values by name, where the names are the caller's (constituents, steps of a strip). */
export interface TableField extends Described {
  kind: 'table'
  of: Field
}

export type Field = NumberField | ChoiceField | TextField | FlagField | ListField | GroupField | TableField
export type Fields = { readonly [name: string]: Field }

export type Value<F> = F extends { kind: 'number'; orNull: true }
  ? number | null
  : F extends { kind: 'number' }
    ? number
    : F extends { kind: 'choice'; of: readonly (infer T)[] }
      ? T
      : F extends { kind: 'text' }
        ? string
        : F extends { kind: 'flag'; orNull: true }
          ? boolean | null
          : F extends { kind: 'flag' }
            ? boolean
            : F extends { kind: 'list'; of: infer E }
              ? Value<E>[]
              : F extends { kind: 'table'; of: infer E }
                ? { [name: string]: Value<E> }
                : F extends { kind: 'group'; fields: infer G }
                  ? Values<G>
                  : never

type OptionalNames<G> = { [K in keyof G]: G[K] extends { optional: true } ? K : never }[keyof G]
type Flat<T> = { [K in keyof T]: T[K] }

export type Values<G> = Flat<
  { [K in Exclude<keyof G, OptionalNames<G>>]: Value<G[K]> } & { [K in OptionalNames<G>]?: Value<G[K]> | undefined }
>

/** What a caller may leave out as well: fields with a preset. Presets are filled in before a calculation runs. */
type PresetNames<G> = { [K in keyof G]: G[K] extends { preset: unknown } ? K : never }[keyof G]
export type Given<G> = Flat<
  { [K in Exclude<keyof G, OptionalNames<G> | PresetNames<G>>]: GivenValue<G[K]> } & {
    [K in OptionalNames<G> | PresetNames<G>]?: GivenValue<G[K]> | undefined
  }
>
type GivenValue<F> = F extends { kind: 'list'; of: infer E }
  ? readonly GivenValue<E>[]
  : F extends { kind: 'table'; of: infer E }
    ? { readonly [name: string]: GivenValue<E> }
    : F extends { kind: 'group'; fields: infer G }
      ? Given<G>
      : Value<F>
