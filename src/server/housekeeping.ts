import type { Clock } from './clock.ts'
import { dropOldCodes } from './database/codes.ts'
import type { Sql } from './database/database.ts'
import { dropOldNonces } from './database/nonces.ts'

const everyMs = 3_600_000
/** A phone that lost the answer to its code may ask again with the same one for a day. */
const codesKeptMs = 86_400_000

/** Spent nonces and codes that have run out: nothing of the record. */
export const tidyUp = async (sql: Sql, now: number): Promise<void> => {
  await dropOldNonces(sql, now)
  await dropOldCodes(sql, now - codesKeptMs)
}

export const keepTidy = (sql: Sql, clock: Clock, report: (problem: unknown) => void): { stop: () => void } => {
  const once = (): void => void tidyUp(sql, clock()).catch(report)
  const timer = setInterval(once, everyMs)
  timer.unref()
  once()
  return { stop: () => clearInterval(timer) }
}
