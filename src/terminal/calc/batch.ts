import { createInterface } from 'node:readline'
import type { Readable } from 'node:stream'
import { calculationById } from '../../science/catalogue.ts'
import { resultOf } from '../../science/evaluate.ts'
import { Refusal } from '../../science/refusal.ts'
import { problemText, unknownId, type Problem } from './problem.ts'

type Answer = { ok: true; result: object } | ({ ok: false } & Problem)

const refused = (error: string, field = ''): Answer => ({ ok: false, error, field })

export const answerLine = (line: string): Answer => {
  let given: unknown
  try {
    given = JSON.parse(line)
  } catch (error) {
    return refused(`the line is not JSON: ${error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : ''}`)
  }
  if (typeof given !== 'object' || given === null || Array.isArray(given)) return refused('a line takes {"id": …, "inputs": {…}}')
  const { id, inputs } = given as { id?: unknown; inputs?: unknown }
  if (typeof id !== 'string') return refused('id is missing: the name of a calculation', 'id')
  const calculation = calculationById(id)
  if (!calculation) return refused(unknownId(id), 'id')
  try {
    return { ok: true, result: resultOf(calculation, inputs as never) }
  } catch (error) {
    // One case that meets a fault of ours must not cost the others their answers.
    if (!(error instanceof Refusal)) return refused(`fault of this program: ${error instanceof Error ? error.message : String(error)}`)
    return { ok: false, ...problemText(error) }
  }
}

/** One line out for each line in, in their order; blank lines are passed over. `print` may ask to wait, for a slow reader. */
export const batch = async (input: Readable, print: (line: string) => Promise<void> | void): Promise<void> => {
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY })) if (line.trim()) await print(JSON.stringify(answerLine(line)))
}
