import type { EntryId } from '../record/ids.ts'
import type { Verifier } from '../record/seal.ts'
import type { ReportRequest } from '../wire/report.ts'
import type { Clock } from './clock.ts'
import type { Identity } from './identity.ts'
import type { Kept } from './kept.ts'
import type { Door } from './server-door.ts'
import type { Store } from './store.ts'

/** What an exchange with the server is made with. */
export interface ExchangeParts {
  store: Store
  door: Door
  clock: Clock
  verifier: Verifier
  /** Own entries that the server now has. */
  onSent(ids: EntryId[]): void
  /** Entries that came in, or of which the server now says more. */
  onEntries(changed: Kept[]): void
  /** So many of the server's entries are still to be fetched. */
  onToCome?(entries: number): void
  /** What the phone tells of itself besides what waits. */
  about(): Promise<Pick<ReportRequest, 'persisted' | 'storage' | 'installed' | 'app'>>
}

/** One exchange on its way: who, with which database of the server. */
export interface Exchanging extends ExchangeParts {
  identity: Identity
  epoch: string
}
