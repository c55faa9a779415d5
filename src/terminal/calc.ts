import { createReadStream } from 'node:fs'
import { open } from 'node:fs/promises'
import type { Readable } from 'node:stream'
import { calculationById, catalogue } from '../science/catalogue.ts'
import { evaluate } from '../science/evaluate.ts'
import type { AnyCalculation } from '../science/calculation.ts'
import { batch } from './calc/batch.ts'
import { describe } from './calc/describe.ts'
import { problemText, unknownId } from './calc/problem.ts'
import { workingText } from './calc/working.ts'

const usage = `calc list | describe <id> | run <id> '<inputs as JSON>' | working <id> '<inputs as JSON>' | batch <file.jsonl or ->`

/** A request that cannot be met: one line for the person, and exit code 2. */
class BadRequest extends Error {}

const found = (command: string, id: string | undefined): AnyCalculation => {
  if (id === undefined) throw new BadRequest(`${command} takes the id of a calculation; "calc list" names them`)
  const calculation = calculationById(id)
  if (!calculation) throw new BadRequest(unknownId(id))
  return calculation
}

const parsed = (command: string, text: string | undefined): unknown => {
  if (text === undefined) throw new BadRequest(`${command} takes the inputs as JSON after the id`)
  try {
    return JSON.parse(text)
  } catch (error) {
    throw new BadRequest(`the inputs are not JSON: ${error instanceof Error ? error.message.replaceAll(/\s+/g, ' ') : ''}`)
  }
}

const evaluated = (calculation: AnyCalculation, inputs: unknown): ReturnType<typeof evaluate> => {
  try {
    return evaluate(calculation, inputs as never)
  } catch (error) {
    throw new BadRequest(problemText(error).error)
  }
}

/** Waits where the reader of the output is slower than we are, so that a long batch does not pile up. */
const print = async (text: string): Promise<void> => {
  if (!process.stdout.write(`${text}\n`)) await new Promise((resolve) => process.stdout.once('drain', resolve))
}

const source = async (name: string): Promise<Readable> => {
  if (name === '-') return process.stdin
  try {
    const file = await open(name)
    const isFolder = (await file.stat()).isDirectory()
    await file.close()
    if (isFolder) throw new Error('it is a folder')
  } catch (error) {
    throw new BadRequest(`${name} cannot be read: ${error instanceof Error ? error.message : ''}`)
  }
  return createReadStream(name)
}

const main = async ([command, first, second]: readonly string[]): Promise<void> => {
  switch (command) {
    case 'list':
      return print(catalogue.map(({ id, title }) => `${id.padEnd(28)} ${title}`).join('\n'))
    case 'describe':
      return print(JSON.stringify(describe(found(command, first)), null, 2))
    case 'run':
      return print(JSON.stringify(evaluated(found(command, first), parsed(command, second)).result))
    case 'working': {
      const calculation = found(command, first)
      return print(workingText(calculation, evaluated(calculation, parsed(command, second)).steps))
    }
    case 'batch':
      if (first === undefined) throw new BadRequest('batch takes a file of lines {"id":…,"inputs":{…}}, or - for what is piped in')
      return batch(await source(first), print)
    default:
      throw new BadRequest(`${command === undefined ? 'a command is missing' : `there is no command ${JSON.stringify(command)}`}: ${usage}`)
  }
}

// Whoever reads the output may have read enough (`calc list | head -1`).
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1))

main(process.argv.slice(2)).catch((error: unknown) => {
  if (!(error instanceof BadRequest)) throw error
  process.stderr.write(`${error.message}\n`)
  process.exitCode = 2
})
