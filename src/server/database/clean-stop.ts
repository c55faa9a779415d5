import { existsSync, readFileSync, rmSync, statSync } from 'node:fs'
import { writeWhole } from '../write-whole.ts'

const markOf = (file: string): string => `${file}.stopped`

/** What changes with whatever is written to the file itself; what was only written beside it is in `-wal`. */
const lookOf = (file: string): string => {
  const { size, mtimeMs } = statSync(file)
  return `${size} ${mtimeMs}\n`
}

/** After a clean stop, when the database is closed. */
export const leaveMark = (file: string): void => writeWhole(markOf(file), lookOf(file), 0o600)

/**
 * Whether the file is as a clean stop left it: it was whole when it was closed, and need not be walked through, which takes the longer the more is
 * in it. The mark serves once; after a kill there is none.
 */
export const takeMark = (file: string): boolean => {
  const mark = markOf(file)
  if (!existsSync(mark)) return false
  const left = readFileSync(mark, 'utf8')
  rmSync(mark)
  return existsSync(file) && left === lookOf(file) && !existsSync(`${file}-wal`)
}
