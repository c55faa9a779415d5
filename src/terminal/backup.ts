import { statSync } from 'node:fs'
import { resolve } from 'node:path'
import { backupTo, keyBeside } from '../server/backup/backup-file.ts'
import { backupText, usePgDump } from '../server/backup/words.ts'
import { databaseFile, keyFile, readSettings } from '../server/settings.ts'
import { walkedText } from '../server/verify/words.ts'
import { BadRequest, endWith } from './problem.ts'

const usage = `Copies the record, as it is at one moment, into one file, while the server runs, and walks through the copy.

  npm run backup -- <file>`

const main = async (words: readonly string[]): Promise<void> => {
  const { folder, databaseUrl } = readSettings(process.env)
  if (databaseUrl !== undefined) throw new BadRequest(usePgDump)
  const [name, ...more] = words
  if (name === undefined || more.length > 0 || name.startsWith('-')) throw new BadRequest(usage)
  const file = resolve(name)
  const walked = await backupTo({ database: databaseFile(folder), key: keyFile(folder), file })
  console.log(backupText({ file, key: keyBeside(file), bytes: statSync(file).size, walked: walkedText(walked) }))
}

main(process.argv.slice(2)).catch(endWith)
