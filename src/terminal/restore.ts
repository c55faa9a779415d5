import { randomBytes } from 'node:crypto'
import { beginRestoredEpoch, restoreFrom, type Restored } from '../server/backup/restore-file.ts'
import { isServedText, restoredText } from '../server/backup/words.ts'
import { migrate } from '../server/database/migrate.ts'
import { isServed, postgresDatabase } from '../server/database/postgres.ts'
import { readSettings } from '../server/settings.ts'
import { walkedText } from '../server/verify/words.ts'
import { verifyRecord } from '../server/verify/verify-record.ts'
import { BadRequest, endWith } from './problem.ts'

const usage = `Puts a backup in the place of the database, which is kept beside it. No server may be running on the data folder.

  npm run restore -- <file>
  npm run restore -- <file> --even-if-broken     a backup in which a link does not hold, where there is no better one

With PostgreSQL, after pg_restore and without a file: npm run restore`

const epoch = (): string => randomBytes(8).toString('hex')

const restoredByItsOwnTools = async (url: string): Promise<Restored> => {
  const database = postgresDatabase(url, (error) => console.error(error), 'bathkeeper-restore')
  try {
    if (await isServed(database.sql)) throw new BadRequest(isServedText)
    await migrate(database.sql, database.dialect)
    const walked = await database.snapshot(verifyRecord)
    const given = { epoch: epoch(), now: Date.now(), detail: 'by the tools of the database' }
    return { walked, gseq: await beginRestoredEpoch(database, given), epoch: given.epoch, replaced: undefined }
  } finally {
    await database.close()
  }
}

const main = async (words: readonly string[]): Promise<void> => {
  const { folder, databaseUrl } = readSettings(process.env)
  const evenIfBroken = words.includes('--even-if-broken')
  const [file, ...more] = words.filter((word) => word !== '--even-if-broken')
  if (more.length > 0 || file?.startsWith('-') || (file === undefined) !== (databaseUrl !== undefined)) throw new BadRequest(usage)
  const restored =
    databaseUrl === undefined ? await restoreFrom({ file: file!, folder, now: Date.now(), epoch: epoch(), evenIfBroken }) : await restoredByItsOwnTools(databaseUrl)
  console.log(restoredText({ ...restored, walked: walkedText(restored.walked) }))
}

main(process.argv.slice(2)).catch(endWith)
