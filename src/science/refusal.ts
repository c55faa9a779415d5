/** The facts of a refusal: what was wrong, where, and what would have been right. Sentences are made at the edge. */
export interface RefusalFacts {
  /** Stable key of the kind of refusal, for words and for tests. */
  code: RefusalCode
  /** Path of the input, as `points[2].celsius`; empty when the inputs are wrong together. */
  field: string
  value: unknown
  /** What the field takes, with its unit: `0 to 100 °C`, `one of g, L`. */
  allowed: string
}

export type RefusalCode =
  | 'missing'
  | 'unknownField'
  | 'wrongKind'
  | 'outOfRange'
  | 'notAChoice'
  | 'tooFew'
  | 'tooMany'
  | 'exactlyOne'
  /** Each value is in range, but together they have no answer. */
  | 'noAnswer'

/** Thrown by a calculation asked outside its domain. */
export class Refusal extends Error implements RefusalFacts {
  readonly code: RefusalCode
  readonly field: string
  readonly value: unknown
  readonly allowed: string

  constructor(facts: RefusalFacts) {
    super(`${facts.code} ${facts.field}`)
    this.name = 'Refusal'
    this.code = facts.code
    this.field = facts.field
    this.value = facts.value
    this.allowed = facts.allowed
  }
}

/** Inputs that are each in range but have no answer together. */
export const noAnswer = (field: string, value: unknown, allowed: string): Refusal =>
  new Refusal({ code: 'noAnswer', field, value, allowed })
