import type { Insertable, Selectable } from 'kysely'
import type { DeviceState, Status } from '../../wire/messages.ts'

/**
 * The tables, as both databases have them: times are milliseconds since 1970, bodies are text, there are no booleans and no identity
 * columns, so that one code serves SQLite and PostgreSQL.
 */
export interface Tables {
  facts: { name: FactName; value: string }
  epochs: { epoch: string; since: number; from_gseq: number; why: 'first' | 'restored' | 'headWitnessed' | 'wiped' }
  /** One row. Updating it takes the lock that puts all commits of entries into one order: a number given is a number committed. */
  record_head: { one: number; gseq: number; sh: string; turn: number }
  counters: { name: 'log' | 'aside'; value: number }
  entries: EntriesTable
  asides: { n: number; dev: string; seq: number; id: string; h: string; sig: string; body: string; recv_at: number; why: 'fork' | 'chain' }
  plans: { gseq: number; effective_from: number; name: string; demo: number; people: string }
  devices: DevicesTable
  codes: CodesTable
  people: PeopleTable
  nonces: { nonce: string; until: number }
  blob_refs: { sha256: string; gseq: number }
  blobs: { sha256: string; bytes: number; type: string; data: Uint8Array; dev: string; recv_at: number }
  log: { n: number; at: number; what: string; dev: string | null; person: string | null; detail: string | null }
}

export type FactName = 'epoch' | 'serverKey'

interface EntriesTable {
  gseq: number
  dev: string
  seq: number
  /** Not unique: a repeated id is an invalid entry, which must be kept like any other. */
  id: string
  kind: string | null
  op: string | null
  h: string
  sig: string
  /** The canonical text that `h` is the hash of. */
  body: string
  recv_at: number
  status: Status
  why: string | null
  flags: string | null
  sh: string
}
export type EntryRow = Selectable<EntriesTable>
export type NewEntryRow = Insertable<EntriesTable>

interface DevicesTable {
  dev: string
  name: string
  key_x: string
  key_y: string
  thumbprint: string
  state: DeviceState
  /** The epoch in which it was enrolled, as its seed has it. */
  epoch: string
  seed: string
  last_seq: number
  last_hash: string
  enrolled_at: number
  heard_at: number | null
  /** JSON of what it last told of itself. */
  report: string | null
  report_at: number | null
  /** Bytes taken in from it on a day, counted in days since 1970. */
  quota_day: number
  quota_bytes: number
}
export type DeviceRow = Selectable<DevicesTable>

interface CodesTable {
  /** HMAC-SHA-256 of the code under the server's key. */
  hash: string
  /** `first` and `terminal` make a supervisor and need no confirmation, because only who stands at the server sees them. */
  purpose: 'first' | 'terminal' | 'device'
  until: number
  /** Its other form, which is used up with it. */
  pair: string
  /** The supervisor it made, once used. */
  person: string | null
  used_at: number | null
  used_by: string | null
}
export type CodeRow = Selectable<CodesTable>

interface PeopleTable {
  person: string
  name: string
  salt: string
  hash: string
  cost: number
  set_at: number
  wrong_tries: number
  locked_until: number
}
export type PersonRow = Selectable<PeopleTable>
