import type { Connection } from './connection.ts'
import type { Database } from './database.ts'
import { StoreFault } from '../faults.ts'

/** Every write that matters waits until it is on the disk, not merely with the operating system. */
export const strict = { durability: 'strict' } as const
/** For what the server has: were it lost with the battery, it would be sent or fetched once more. It is on the disk before any later strict write is. */
export const soon = { durability: 'relaxed' } as const

/** How the tables are reached: `use` to read; `save` to write, making room once when there is none. */
export interface Session {
  use<T>(where: string, work: (database: Database) => Promise<T>): Promise<T>
  save<T>(where: string, work: (database: Database) => Promise<T>): Promise<T>
  /** A row of the record that cannot be read was left out of what was asked for. */
  unreadable(where: string): void
}

export const createSession = (connection: Connection, dropSentBlobs: () => Promise<number>, unreadable: (where: string) => void): Session => {
  const use: Session['use'] = (where, work) => connection.use(where, work)
  return {
    use,
    async save(where, work) {
      try {
        return await use(where, work)
      } catch (thrown) {
        if (!(thrown instanceof StoreFault && thrown.code === 'full')) throw thrown
        if ((await dropSentBlobs()) === 0) throw thrown
      }
      return use(where, work)
    },
    unreadable,
  }
}

interface Transaction {
  done: Promise<void>
  abort(): void
}

/**
 * Asks for all the writes of a transaction and waits until they are durable. A write that cannot even be asked for (a value that
 * cannot be stored) aborts the transaction: otherwise those before it would be committed alone.
 */
export const completed = async (transaction: Transaction, writes: (ask: (request: Promise<unknown>) => void) => void): Promise<void> => {
  const asked: Promise<unknown>[] = [transaction.done]
  let refused: { thrown: unknown } | undefined
  try {
    writes((request) => asked.push(request))
  } catch (thrown) {
    refused = { thrown }
    try {
      transaction.abort()
    } catch {
      // It has ended by itself; what it did is undone either way.
    }
  }
  const failures = (await Promise.allSettled(asked)).flatMap((outcome) => (outcome.status === 'rejected' ? [outcome.reason as unknown] : []))
  if (refused) throw refused.thrown
  if (failures.length) throw failures.find((failure) => !isAbort(failure)) ?? failures[0]
}

/** When a transaction is aborted, all its requests fail with this; only one of the failures tells the reason, such as a full disk. */
const isAbort = (failure: unknown): boolean => failure instanceof Error && failure.name === 'AbortError'
