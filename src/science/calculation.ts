import type { Fields, Given, Values } from './field.ts'

/** One line of the working: what was worked out, how, and the number. */
export interface Step {
  says: string
  /** In symbols or words, as it would be written on paper. */
  formula?: string
  value: number | string
  unit?: string
}

/**
 * A calculation as a value. `run` is pure: no clock, no chance, no storage. It trusts that single fields are in their ranges
 * (`evaluate` checks them) and throws `Refusal` where the inputs together have no answer.
 */
export interface Calculation<I extends Fields = Fields, O extends Fields = Fields> {
  /** Fixed for ever: screens, records and tests name it. */
  id: string
  title: string
  inputs: I
  outputs: O
  formula: string
  /** Author or standard, year, equation or table. */
  source: string
  /** Where it holds, what is neglected and how large that is. */
  domain: string
  example: {
    inputs: Given<I>
    /** Some or all outputs; numbers are compared within `tolerance`. */
    result: Partial<Values<O>>
    tolerance: number
    source: string
  }
  run(inputs: Values<I>): Values<O>
  steps(inputs: Values<I>, result: Values<O>): Step[]
}

/** Gives the compiler the field types of a calculation written as a literal. */
export const calculation = <const I extends Fields, const O extends Fields>(it: Calculation<I, O>): Calculation<I, O> => it

/** A calculation whose field types are not known here, as the catalogue lists them. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
export type AnyCalculation = Calculation<any, any>
