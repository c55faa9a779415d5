/** What can befall the store on a phone. The page has a sentence for each: what happened, what is safe, what to do now. */
export type StoreFaultCode =
  /** No IndexedDB, or what was written could not be read back: no record can be kept here. */
  | 'unavailable'
  /** The connection broke and broke again when it was reopened. What was saved before is safe. */
  | 'databaseLost'
  /** No room, even after photos that the server already has were dropped. What was saved before is safe; this entry is not saved. */
  | 'full'
  /** The database, or a row in it, cannot be read. What can still be read may be exported. */
  | 'corrupt'
  /** A newer version of the app has already changed the database: this page must be reloaded. */
  | 'newerVersion'
  /** The head moved under every attempt to append. Nothing was saved. */
  | 'contended'

export class StoreFault extends Error {
  constructor(
    readonly code: StoreFaultCode,
    /** Which table or row, for the log. */
    readonly where: string,
    cause?: unknown,
  ) {
    super(`${code} at ${where}`, { cause })
    this.name = 'StoreFault'
  }
}

const named = (thrown: unknown): string => (thrown instanceof Error || thrown instanceof DOMException ? thrown.name : '')

/**
 * A connection that the browser dropped shows under several names: iOS drops those of pages in the background with an
 * UnknownError or an AbortError, the others say InvalidStateError once the connection is closing.
 */
export const isLost = (thrown: unknown): boolean => ['InvalidStateError', 'UnknownError', 'AbortError', 'TransactionInactiveError'].includes(named(thrown))

export const asFault = (thrown: unknown, where: string): unknown => {
  if (thrown instanceof StoreFault) return thrown
  switch (named(thrown)) {
    case 'QuotaExceededError':
      return new StoreFault('full', where, thrown)
    case 'VersionError':
      return new StoreFault('newerVersion', where, thrown)
    case 'NotReadableError':
    case 'DataCloneError':
      return new StoreFault('corrupt', where, thrown)
    default:
      return thrown
  }
}
