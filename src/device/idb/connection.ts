import type { Database } from './database.ts'
import { asFault, isLost, StoreFault } from '../faults.ts'

/** One connection, opened when first used. A lost one is opened once more and the work done again; then it is a fault. */
export class Connection {
  #opening: Promise<Database> | undefined

  constructor(private readonly open: (lost: () => void) => Promise<Database>) {}

  async use<T>(where: string, work: (database: Database) => Promise<T>): Promise<T> {
    try {
      return await work(await this.#database())
    } catch (first) {
      if (!isLost(first)) throw asFault(first, where)
    }
    await this.close()
    let database: Database
    try {
      database = await this.#database()
    } catch (again) {
      // A database that will not open twice running is damaged, or its disk is.
      throw isLost(again) ? new StoreFault('corrupt', 'open', again) : asFault(again, 'open')
    }
    try {
      return await work(database)
    } catch (again) {
      throw isLost(again) ? new StoreFault('databaseLost', where, again) : asFault(again, where)
    }
  }

  async close(): Promise<void> {
    const opening = this.#opening
    this.#opening = undefined
    try {
      ;(await opening)?.close()
    } catch {
      // It never opened; whoever waited for it has been told.
    }
  }

  #database(): Promise<Database> {
    const opening = (this.#opening ??= this.open(() => {
      if (this.#opening === opening) this.#opening = undefined
    }))
    opening.catch(() => {
      if (this.#opening === opening) this.#opening = undefined
    })
    return opening
  }
}
