import type { Tx } from './database.ts'

interface Waiting {
  work(tx: Tx): Promise<unknown>
  resolve(result: unknown): void
  reject(error: unknown): void
}

const mostTogether = 32

/**
 * Work that needs the record's one lock, in the order in which it came. What came while the last was being written goes into one transaction: the
 * wait for the disk is theirs together, and nobody holds a connection only to wait for the lock. Where one of them fails, each is done by itself.
 */
export const together = (transact: <T>(work: (tx: Tx) => Promise<T>) => Promise<T>): (<T>(work: (tx: Tx) => Promise<T>) => Promise<T>) => {
  const waiting: Waiting[] = []
  let isBusy = false

  const alone = ({ work, resolve, reject }: Waiting): Promise<void> => transact(work).then(resolve, reject)

  const all = async (some: readonly Waiting[]): Promise<void> => {
    const results: unknown[] = []
    try {
      await transact(async (tx) => {
        for (const { work } of some) results.push(await work(tx))
      })
    } catch {
      for (const one of some) await alone(one)
      return
    }
    for (const [index, { resolve }] of some.entries()) resolve(results[index])
  }

  const go = async (): Promise<void> => {
    if (isBusy) return
    isBusy = true
    while (waiting.length) {
      const some = waiting.splice(0, mostTogether)
      await (some.length === 1 ? alone(some[0]!) : all(some))
    }
    isBusy = false
  }

  return <T>(work: (tx: Tx) => Promise<T>) =>
    new Promise<T>((resolve, reject) => {
      waiting.push({ work, resolve: resolve as Waiting['resolve'], reject })
      void go()
    })
}
