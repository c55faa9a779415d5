/** The part of Web Locks that is used. Where the browser has none, the compare-and-set in the store alone keeps the chain right. */
export interface Locks {
  /** Waits for its turn. */
  inTurn<T>(name: string, work: () => Promise<T>): Promise<T>
  /** Only if nobody else holds it; undefined when somebody does. */
  ifFree<T>(name: string, work: () => Promise<T>): Promise<T | undefined>
}

export const noLocks: Locks = {
  inTurn: (_, work) => work(),
  ifFree: (_, work) => work(),
}

export const webLocks = (): Locks => {
  const manager = (globalThis as { navigator?: { locks?: LockManager } }).navigator?.locks
  if (!manager) return noLocks
  return {
    inTurn: async (name, work) => manager.request(name, work),
    ifFree: async (name, work) => manager.request(name, { ifAvailable: true }, (lock) => (lock ? work() : Promise.resolve(undefined))),
  }
}
