import * as z from 'zod/mini'
import { quickParse } from '../../record/fits.ts'
import { deviceId, hash } from '../../record/ids.ts'
import { StoreFault } from '../faults.ts'
import { kept, type Kept } from '../kept.ts'
import type { ChainHead, Cursor } from '../store.ts'

/** What comes out of the database is parsed like anything else from outside: a disk or another version may have changed it. */

const headRow = z.strictObject({ dev: deviceId, seq: z.int().check(z.minimum(0)), h: hash })
const cursorRow = z.strictObject({ epoch: z.string(), after: z.int().check(z.minimum(0)), sh: hash })

const read = <T extends z.core.$ZodType>(schema: T, raw: unknown, where: string): z.infer<T> => {
  const parsed = z.safeParse(schema, raw)
  if (!parsed.success) throw new StoreFault('corrupt', where, parsed.error)
  return parsed.data
}

export const readHead = (raw: unknown): ChainHead | undefined => (raw === undefined ? undefined : read(headRow, raw, 'head'))
export const readCursor = (raw: unknown): Cursor | undefined => (raw === undefined ? undefined : read(cursorRow, raw, 'cursor'))
const quickKept = quickParse(kept)
export const readKept = (raw: unknown): Kept => {
  const parsed = quickKept(raw)
  return parsed.success ? parsed.data : read(kept, raw, 'entries')
}

/** The rows up to the first that cannot be read: what lies before it can still be sent. Throws where that is the very first. */
export const readableBeginning = (rows: readonly unknown[]): Kept[] => {
  const bad = rows.findIndex((row) => !quickKept(row).success)
  return bad === 0 ? [readKept(rows[0])] : rows.slice(0, bad < 0 ? undefined : bad).map(readKept)
}

/** Entries for the screens: one that cannot be read must not hide the others, but it is said. */
export const readable = (rows: readonly unknown[], unreadable: (where: string) => void): Kept[] => {
  const good: Kept[] = []
  for (const row of rows) {
    const parsed = quickKept(row)
    if (parsed.success) good.push(parsed.data)
    else unreadable(`entries/${keyOf(row)}`)
  }
  return good
}

const keyOf = (row: unknown): string => {
  const id = (row as { entry?: { id?: unknown } } | null)?.entry?.id
  return typeof id === 'string' ? id : 'unknown'
}
