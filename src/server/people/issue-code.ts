import { shortCode } from '../../wire/code.ts'
import type { Sql } from '../database/database.ts'
import { insertCodes } from '../database/codes.ts'
import type { CodeRow } from '../database/tables.ts'
import type { ServerKey } from '../keys.ts'

export const codeHash = (key: ServerKey, plain: string): string => key.mac('code', plain)

/** A code in its two forms; only what HMAC makes of them is kept. */
export const issueCode = async (
  sql: Sql,
  parts: { key: ServerKey; random: (bytes: number) => Uint8Array },
  given: { purpose: CodeRow['purpose']; until: number },
): Promise<{ long: string; short: string; until: number }> => {
  const long = Buffer.from(parts.random(16)).toString('base64url')
  const short = shortCode(parts.random(7))
  const [longHash, shortHash] = [codeHash(parts.key, long), codeHash(parts.key, short)]
  const common = { purpose: given.purpose, until: given.until, person: null, used_at: null, used_by: null }
  await insertCodes(sql, [
    { ...common, hash: longHash, pair: shortHash },
    { ...common, hash: shortHash, pair: longHash },
  ])
  return { long, short, until: given.until }
}
