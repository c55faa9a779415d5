import type { Sql } from '../database/database.ts'
import { spendNonce } from '../database/nonces.ts'
import { sameText } from '../keys.ts'
import type { Parts } from '../parts.ts'

const lifeMs = 300_000

/** Nonces that any instance can give and check: a time, chance, and a MAC under the server's key. Used ones are kept in the database, in memory where one server has it to itself, until they would have run out. */
export class Nonces {
  constructor(
    private readonly parts: Pick<Parts, 'key' | 'clock' | 'random' | 'database'>,
  ) {}

  give(): string {
    const text = `${this.parts.clock().toString(36)}-${Buffer.from(this.parts.random(12)).toString('base64url')}`
    return `${text}-${this.#mac(text)}`
  }

  /** Good the first time, for five minutes. */
  async spend(sql: Sql, nonce: string): Promise<boolean> {
    const text = nonce.slice(0, -(macLength + 1))
    const givenAt = Number.parseInt(text.split('-')[0] ?? '', 36)
    const age = this.parts.clock() - givenAt
    if (!(age >= 0 && age <= lifeMs) || !sameText(`${text}-${this.#mac(text)}`, nonce)) return false
    return spendNonce(sql, nonce, givenAt + lifeMs)
  }

  #mac(text: string): string {
    return this.parts.key.mac('nonce', text + this.parts.database.life).slice(0, macLength)
  }
}
const macLength = 22
