import { readFileSync } from 'node:fs'
import { batch } from './calc/batch.ts'
import { describe } from './calc/describe.ts'
import { problemText, unknownId } from './calc/problem.ts'
import { calculationById, catalogue } from '../science/catalogue.ts'
import { evaluate } from '../science/evaluate.ts'

const usage = `Usage:
  calc list                        ids and titles
  calc describe <id>               inputs and outputs as JSON Schema, source, example
  calc run <id> '<inputs as JSON>' one JSON result
  calc batch <file.jsonl | ->      lines {"id":…,"inputs":{…}} in, a line a case out`

/** A request that cannot be met: one line for the person, and exit code 2. */
class BadRequest extends Error {}

const found = (id: string | undefined) => {
  if (id === undefined) throw new BadRequest(usage)
  const calculation = calculationById(id)
  if (!calculation) throw new BadRequest(unknownId(id))
  return calculation
}

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new BadRequest(`the inputs are not JSON: ${error instanceof Error ? error.message : ''}`)
  }
}

const print = (text: string): void => {
  process.stdout.write(`${text}\n`)
}

const main = async ([command, first, second]: readonly string[]): Promise<void> => {
  switch (command) {
    case 'list':
      for (const { id, title } of catalogue) print(`${id.padEnd(24)} ${title}`)
      return
    case 'describe':
      print(JSON.stringify(describe(found(first)), null, 2))
      return
    case 'run': {
      const calculation = found(first)
      if (second === undefined) throw new BadRequest(`run ${first ?? ''} takes its inputs as JSON`)
      try {
        print(JSON.stringify(evaluate(calculation, parsed(second) as never).result))
      } catch (error) {
        if (error instanceof BadRequest) throw error
        throw new BadRequest(problemText(error).error)
      }
      return
    }
    case 'batch':
      if (first === undefined) throw new BadRequest(usage)
      try {
        await batch(first === '-' ? process.stdin : [readFileSync(first)], print)
      } catch (error) {
        if (error instanceof Error && 'code' in error) throw new BadRequest(`${first} cannot be read: ${error.message}`)
        throw error
      }
      return
    default:
      throw new BadRequest(usage)
  }
}

// Whoever reads the output may have read enough (`calc list | head -1`).
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1))

main(process.argv.slice(2)).catch((error: unknown) => {
  if (!(error instanceof BadRequest)) throw error
  process.stderr.write(`${error.message}\n`)
  process.exitCode = 2
})
