import { evaluate } from '../../science/evaluate.ts'
import type { Calculation } from '../../science/calculation.ts'
import type { Fields, Given, Values } from '../../science/field.ts'
import { Refusal } from '../../science/refusal.ts'
import type { Remedy } from '../remedy.ts'
import type { Row } from '../row.ts'
import type { Working } from '../sealed-dose.ts'
import type { Situation } from '../situation.ts'

/** What every remedy of an exception has. */
export const act = ({ exception, station }: Situation, { source }: Pick<Row, 'source'>, rest: Pick<Remedy, 'code' | 'says'> & Partial<Remedy>): Remedy => ({
  id: rest.code, exception: exception.id, station: station.id, how: [], source, ...rest,
})

export interface Worked<O extends Fields> {
  result: Values<O>
  working: Working
}

/** A calculation with its working, or undefined where it has no answer for these figures. */
export const worked = <I extends Fields, O extends Fields>(it: Calculation<I, O>, inputs: Given<I>): Worked<O> | undefined => {
  try {
    const { result, steps } = evaluate(it, inputs)
    return { result, working: { calculation: it.id, inputs: inputs as Record<string, unknown>, result: result as Record<string, unknown>, steps } }
  } catch (error) {
    if (error instanceof Refusal) return undefined
    throw error
  }
}
