import { existsSync } from 'node:fs'
import { postgresDatabase } from '../server/database/postgres.ts'
import { readFileDatabase } from '../server/database/read-only.ts'
import { databaseFile, readSettings } from '../server/settings.ts'
import { verifyRecord } from '../server/verify/verify-record.ts'
import { walkedText } from '../server/verify/words.ts'
import type { Walked } from '../server/verify/fault.ts'
import { BadRequest, endWith } from './problem.ts'

const usage = `Walks the whole record, hashes, signatures, chains and head, and names the first bad link. The server may be running.

  npm run verify-record               of the data folder, or of DATABASE_URL
  npm run verify-record -- <file>     of a backup`

const inPostgres = async (url: string): Promise<Walked> => {
  const database = postgresDatabase(url, (error) => console.error(error), 'bathkeeper-verify')
  try {
    return await database.snapshot(verifyRecord)
  } finally {
    await database.close()
  }
}

const main = async (words: readonly string[]): Promise<void> => {
  const { folder, databaseUrl } = readSettings(process.env)
  const [name, ...more] = words
  if (more.length > 0 || name?.startsWith('-')) throw new BadRequest(usage)
  const file = name ?? databaseFile(folder)
  if ((name !== undefined || databaseUrl === undefined) && !existsSync(file)) throw new BadRequest(`There is no file ${file}.\n\n${usage}`)
  const walked = name === undefined && databaseUrl !== undefined ? await inPostgres(databaseUrl) : await readFileDatabase(file, verifyRecord)
  console.log(walkedText(walked))
  if (!walked.ok) process.exitCode = 1
}

main(process.argv.slice(2)).catch(endWith)
