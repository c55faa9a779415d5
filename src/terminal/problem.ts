import { startProblem } from '../server/words.ts'

/** A request that cannot be met: one line for the person, and exit code 2. */
export class BadRequest extends Error {}

/** Ends a command with the sentence for what happened. */
export const endWith = (error: unknown): void => {
  console.error(error instanceof BadRequest ? error.message : startProblem(error))
  process.exitCode = error instanceof BadRequest ? 2 : 1
}
