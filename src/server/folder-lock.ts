import { join } from 'node:path'
import Sqlite from 'better-sqlite3'

/** Another server, or a restore, has this data folder. */
export class FolderInUse extends Error {
  constructor(readonly folder: string) {
    super(`in use: ${folder}`)
    this.name = 'FolderInUse'
  }
}

/**
 * Keeps a second server, and a restore, out of a data folder. The lock is one of the operating system's, taken through an empty SQLite file, since
 * Node has none of its own: whatever way this process ends, the lock ends with it, and a kill leaves nothing behind that would have to be removed.
 */
export const lockFolder = (folder: string): { release: () => void } => {
  const file = new Sqlite(join(folder, 'in-use.lock'), { timeout: 0 })
  try {
    file.exec('begin exclusive')
  } catch (error) {
    file.close()
    if (error instanceof Sqlite.SqliteError && error.code.startsWith('SQLITE_BUSY')) throw new FolderInUse(folder)
    throw error
  }
  return { release: () => file.close() }
}
