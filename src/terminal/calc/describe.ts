import * as z from 'zod/mini'
import type { AnyCalculation } from '../../science/calculation.ts'
import { inputSchema } from '../../science/evaluate.ts'
import { groupSchema } from '../../science/schema.ts'

/** A calculation as data: its inputs and outputs as JSON Schema (with units), where it comes from, one example. */
export const describe = (it: AnyCalculation): object => ({
  id: it.id,
  title: it.title,
  inputs: z.toJSONSchema(inputSchema(it), { io: 'input' }),
  outputs: z.toJSONSchema(groupSchema(it.outputs)),
  formula: it.formula,
  source: it.source,
  domain: it.domain,
  example: it.example,
})
