import type { Database } from './database/database.ts'
import { readFact, writeFact } from './database/facts.ts'
import { readKeyFile, writeKeyFile, type ServerKey } from './keys.ts'

/** The record was made by a server with another key. Phones believe only that one: better not to start than to make them all strangers. */
export class OtherKey extends Error {
  constructor(readonly file: string) {
    super(`other key: ${file}`)
    this.name = 'OtherKey'
  }
}

export const keyText = ({ publicKey }: Pick<ServerKey, 'publicKey'>): string => `${publicKey.x}.${publicKey.y}`

/** The key of this record: made at the first start, and from then on the same for every instance and after every restore. */
export const keyOfRecord = async (database: Database, file: string, given: { mayBeNew: boolean }): Promise<ServerKey> =>
  database.transact(async (tx) => {
    const known = await readFact(tx, 'serverKey')
    const kept = readKeyFile(file)
    if (known !== undefined && !given.mayBeNew && (!kept || keyText(kept) !== known)) throw new OtherKey(file)
    const key = kept ?? writeKeyFile(file)
    if (known !== keyText(key)) await writeFact(tx, 'serverKey', keyText(key))
    return key
  })
