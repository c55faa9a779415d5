import { scrypt } from 'node:crypto'
import type { Database } from '../database/database.ts'
import { clearTries, countTry, readPerson } from '../database/people.ts'
import type { PersonRow } from '../database/tables.ts'
import { sameText } from '../keys.ts'
import { Refused } from '../http/refused.ts'

/** scrypt, N = 2^15, r = 8, p = 1: 32 MiB and about 70 ms of one core for each try (RFC 7914). */
const cost = 15
const memoryBytes = 64 << 20

const derive = (passphrase: string, salt: string, costExponent: number): Promise<string> =>
  new Promise((resolve, reject) => {
    const options = { N: 2 ** costExponent, r: 8, p: 1, maxmem: memoryBytes }
    // NFKC: the same passphrase keyed on two keyboards is the same text.
    scrypt(passphrase.normalize('NFKC'), Buffer.from(salt, 'base64url'), 32, options, (error, key) =>
      error ? reject(error) : resolve(key.toString('base64url')),
    )
  })

/** Five tries, then a wait that doubles from half a minute to a quarter of an hour. */
const lockMsFor = (wrongTries: number): number => (wrongTries < 5 ? 0 : Math.min(900_000, 30_000 * 2 ** (wrongTries - 5)))

export class Passphrases {
  #working = 0
  constructor(
    private readonly parts: { database: Database; random: (bytes: number) => Uint8Array; clock: () => number; limits: { passphrasesAtOnce: number } },
  ) {}

  async row(person: string, name: string, passphrase: string): Promise<PersonRow> {
    const salt = Buffer.from(this.parts.random(16)).toString('base64url')
    const hash = await this.#derive(passphrase, salt, cost)
    return { person, name, salt, hash, cost, set_at: this.parts.clock(), wrong_tries: 0, locked_until: 0 }
  }

  /** Refuses a wrong passphrase and an unknown person alike, after the same work. */
  async check(person: string, passphrase: string): Promise<PersonRow> {
    const { database, clock } = this.parts
    const row = await database.transact((tx) => countTry(tx, person, clock(), lockMsFor))
    if (!row) {
      const known = await readPerson(database.sql, person)
      if (known) throw new Refused('tooMany', { retryAfter: Math.max(1, Math.ceil((known.locked_until - clock()) / 1000)) })
    }
    const hash = await this.#derive(passphrase, row?.salt ?? 'AAAAAAAAAAAAAAAAAAAAAA', row?.cost ?? cost)
    if (!row || !sameText(hash, row.hash)) throw new Refused('passphrase')
    await clearTries(database.sql, person)
    return row
  }

  async #derive(passphrase: string, salt: string, costExponent: number): Promise<string> {
    if (this.#working >= this.parts.limits.passphrasesAtOnce) throw new Refused('busy', { retryAfter: 1 })
    this.#working += 1
    try {
      return await derive(passphrase, salt, costExponent)
    } finally {
      this.#working -= 1
    }
  }
}
