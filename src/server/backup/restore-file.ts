import { copyFileSync, existsSync, linkSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import Sqlite from 'better-sqlite3'
import { beginEpoch, readFact } from '../database/facts.ts'
import { lockReach } from '../database/head.ts'
import { note } from '../database/log.ts'
import { migrate } from '../database/migrate.ts'
import { readFileDatabase } from '../database/read-only.ts'
import { sqliteDatabase } from '../database/sqlite.ts'
import type { Database } from '../database/database.ts'
import { lockFolder } from '../folder-lock.ts'
import { readKeyFile } from '../keys.ts'
import { keyText } from '../server-key.ts'
import { databaseFile, keyFile } from '../settings.ts'
import type { Walked } from '../verify/fault.ts'
import { verifyRecord } from '../verify/verify-record.ts'
import { syncFile, syncFolder } from '../write-whole.ts'
import { copyDatabase, keyBeside, NotDone } from './backup-file.ts'

/** From here on numbers may name other entries than phones have seen: a new epoch, so that they ask, pull anew and send again what they hold. */
export const beginRestoredEpoch = (database: Database, given: { epoch: string; now: number; detail: string }): Promise<number> =>
  database.transact(async (tx) => {
    const { gseq } = await lockReach(tx)
    await beginEpoch(tx, { epoch: given.epoch, since: given.now, why: 'restored' })
    await note(tx, given.now, 'restored', { detail: given.detail })
    return gseq
  })

/** The key that goes with the record in this backup: the one in the data folder where it fits, else the one beside the backup. */
const keyFor = (wanted: string | undefined, files: { own: string; beside: string }): string | undefined =>
  (wanted === undefined ? [files.beside, files.own] : [files.own, files.beside]).find((file) => {
    const key = readKeyFile(file)
    return key !== undefined && (wanted === undefined || keyText(key) === wanted)
  })

/** Brings what is still in the write-ahead log into the database file, where that can be read; a damaged one keeps its log beside it. */
const settle = (file: string): void => {
  let opened: Sqlite.Database | undefined
  try {
    opened = new Sqlite(file, { fileMustExist: true })
    opened.pragma('journal_mode = DELETE')
  } catch (error) {
    if (!(error instanceof Sqlite.SqliteError)) throw error
  } finally {
    opened?.close()
  }
}

/** A second name for the same file, so that the first is never without one; a copy where the file system has no links. */
const alsoAs = (file: string, name: string): void => {
  try {
    linkSync(file, name)
  } catch {
    copyFileSync(file, name)
    syncFile(name)
  }
}

export interface Restored {
  walked: Walked
  gseq: number
  epoch: string
  /** Where the replaced database is now; undefined where there was none. */
  replaced: string | undefined
}

/**
 * Puts a backup in the place of the data folder's database. Everything is made ready beside it first; what was there keeps a name of its own. `evenIfBroken`
 * takes a backup in which a link does not hold, when there is no better one.
 */
export const restoreFrom = async (given: { file: string; folder: string; now: number; epoch: string; evenIfBroken: boolean }): Promise<Restored> => {
  const file = resolve(given.file)
  if (!existsSync(file)) throw new NotDone('noBackup', file)
  mkdirSync(given.folder, { recursive: true })
  const lock = lockFolder(given.folder)
  const [target, ownKey] = [databaseFile(given.folder), keyFile(given.folder)]
  const ready = `${target}.restoring`
  try {
    const isRecord = await readFileDatabase(file, async (sql) => (await sql.introspection.getTables()).some(({ name }) => name === 'record_head'))
    if (!isRecord) throw new NotDone('noRecord', file)
    const walked = await readFileDatabase(file, verifyRecord)
    if (!walked.ok && !given.evenIfBroken) throw new NotDone('broken', file, walked)
    const key = keyFor(await readFileDatabase(file, (sql) => readFact(sql, 'serverKey')), { own: ownKey, beside: keyBeside(file) })
    if (key === undefined) throw new NotDone('noKey', keyBeside(file))

    const stamp = new Date(given.now).toISOString().replaceAll(':', '-')
    const replaced = existsSync(target) ? join(given.folder, `replaced-${stamp}.db`) : undefined
    await copyDatabase(file, ready)
    const database = sqliteDatabase(ready)
    let gseq: number
    try {
      await migrate(database.sql, 'sqlite')
      const detail = `from ${basename(file)}${replaced ? `; replaced database kept as ${basename(replaced)}` : ''}`
      gseq = await beginRestoredEpoch(database, { epoch: given.epoch, now: given.now, detail })
    } finally {
      await database.close()
    }
    settle(ready)
    syncFile(ready)
    if (replaced !== undefined) {
      settle(target)
      alsoAs(target, replaced)
      if (existsSync(`${target}-wal`)) renameSync(`${target}-wal`, `${replaced}-wal`)
      rmSync(`${target}-shm`, { force: true })
    }
    if (key !== ownKey) {
      if (existsSync(ownKey)) renameSync(ownKey, join(given.folder, `replaced-${stamp}.server-key.pem`))
      copyFileSync(key, ownKey)
      syncFile(ownKey)
    }
    renameSync(ready, target)
    syncFolder(dirname(target))
    return { walked, gseq, epoch: given.epoch, replaced }
  } finally {
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${ready}${end}`, { force: true })
    lock.release()
  }
}
