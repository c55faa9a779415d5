import { copyFileSync, chmodSync, existsSync, renameSync, rmSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import Sqlite from 'better-sqlite3'
import { readFileDatabase } from '../database/read-only.ts'
import { openFile } from '../database/sqlite.ts'
import type { Walked } from '../verify/fault.ts'
import { verifyRecord } from '../verify/verify-record.ts'
import { syncFile, syncFolder } from '../write-whole.ts'

/** A backup or restore that was not done; nothing was touched. */
export class NotDone extends Error {
  constructor(
    readonly code: 'exists' | 'noFolder' | 'noDatabase' | 'noBackup' | 'noRecord' | 'broken' | 'noKey',
    readonly file: string,
    readonly walked?: Walked,
  ) {
    super(`${code}: ${file}`)
    this.name = 'NotDone'
  }
}

/** The server's key goes beside the database, not into it: who finds only the database can sign nothing with it. */
export const keyBeside = (backup: string): string => `${backup}.server-key.pem`

/** A copy of one moment in one file, with nothing beside it that would have to be kept with it. Written in one step, so that a server that keeps writing cannot make it begin again for ever. */
export const copyDatabase = async (from: string, to: string): Promise<void> => {
  rmSync(to, { force: true })
  const source = openFile(from, { readonly: true })
  try {
    await source.backup(to, { progress: () => 0x7fff_ffff })
  } finally {
    source.close()
  }
  const copy = new Sqlite(to)
  copy.pragma('journal_mode = DELETE')
  copy.close()
  chmodSync(to, 0o600)
  syncFile(to)
}

/** A backup of a database in use, walked through before it gets its name: one that does not hold is no backup. */
export const backupTo = async (given: { database: string; key: string; file: string }): Promise<Walked & { ok: true }> => {
  const file = resolve(given.file)
  if (!existsSync(given.database)) throw new NotDone('noDatabase', given.database)
  if (!existsSync(given.key)) throw new NotDone('noKey', given.key)
  if (!existsSync(dirname(file))) throw new NotDone('noFolder', dirname(file))
  for (const one of [file, keyBeside(file)]) if (existsSync(one)) throw new NotDone('exists', one)
  const part = `${file}.part`
  try {
    await copyDatabase(given.database, part)
    const walked = await readFileDatabase(part, verifyRecord)
    if (!walked.ok) throw new NotDone('broken', given.database, walked)
    copyFileSync(given.key, keyBeside(file))
    chmodSync(keyBeside(file), 0o600)
    syncFile(keyBeside(file))
    renameSync(part, file)
    syncFolder(dirname(file))
    return walked
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${part}${end}`, { force: true })
  }
}
