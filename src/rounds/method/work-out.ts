import type { ReadingCheck } from '../../plan/check.ts'
import type { Method } from '../../plan/lab-plan.ts'
import { evaluate, resultOf } from '../../science/evaluate.ts'
import type { AnyCalculation, Step } from '../../science/calculation.ts'
import { Refusal, type RefusalFacts } from '../../science/refusal.ts'
import { titrationRepeatability } from '../../science/titration/repeatability.ts'
import { convert, quantityOf } from '../../science/units.ts'
import { outputOf } from './asked.ts'
import type { TitrantNow } from './titrants.ts'

/** Without one in the plan: a fiftieth of what is found. Common practice, no source. */
const usualRepeatability = 0.02

export type Determination =
  | { ok: true; value: number; inputs: Record<string, unknown>; result: Record<string, unknown>; steps: readonly Step[] }
  | { ok: false; refusal: RefusalFacts }

interface DeterminationAsked {
  check: ReadingCheck
  method: Method
  calculation: AnyCalculation | undefined
  titrants: readonly TitrantNow[]
  /** What was keyed, and the end point of a curve. */
  keyed: Readonly<Record<string, number>>
}

/** One determination: the calculation with what the plan fixes, the strength of the titrants and what was keyed; in the unit of the check. */
export const determine = ({ check, method, calculation, titrants, keyed }: DeterminationAsked): Determination => {
  if (!calculation) return { ok: true, value: keyed['value']!, inputs: {}, result: {}, steps: [] }
  const inputs = { ...method.given, ...Object.fromEntries(titrants.flatMap(({ field, value }) => (value === undefined ? [] : [[field, value]]))), ...keyed }
  try {
    const { result, steps } = evaluate(calculation, inputs)
    const { name, unit } = outputOf(check, calculation)
    const value = (result as Record<string, unknown>)[name]
    if (typeof value !== 'number') throw new Error(`${calculation.id} gave no ${name}`)
    return { ok: true, value: inUnit(value, unit, check.unit), inputs, result, steps }
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown
    return { ok: false, refusal: thrown }
  }
}

/** Units that the product can convert are converted; others (a titrant's eq/L by a calculation in g/L) are as the method means them. */
const inUnit = (value: number, from: string, to: string): number => (from !== to && quantityOf(from) !== undefined && quantityOf(from) === quantityOf(to) ? convert({ value, from, to }) : value)

export interface Together {
  value: number
  range: number
  limit: number
  repeats: boolean
  taken: 'single' | 'mean' | 'median' | 'thirdNeeded'
}

/** What the determinations of one sample come to. */
export const together = (values: readonly number[], method: Method): Together => {
  const repeatabilityLimit = method.repeatabilityLimit ?? Math.max(1e-9, usualRepeatability * Math.abs(values[0] ?? 0))
  const { value, range, criticalRange, repeats, taken } = resultOf(titrationRepeatability, { values: [...values], repeatabilityLimit })
  return { value, range, limit: criticalRange, repeats, taken }
}

/** On the step of the check, as it would be written down. */
export const writtenValue = (value: number, { step }: ReadingCheck): { value: number; keyed: string } => {
  const decimals = String(step).split('.')[1]?.length ?? 0
  const keyed = (Math.round(value / step) * step).toFixed(decimals)
  return { value: Number(keyed), keyed }
}
