import { readEnvelope, understand, type Entry, type Envelope } from '../../record/entry.ts'
import { isKind, kinds } from '../../record/kinds.ts'
import { parsePlan } from '../../plan/plan-problems.ts'
import type { DeviceState, Status } from '../../wire/messages.ts'
import type { Chained } from '../../wire/chained.ts'
import { countersignAbout } from '../../wire/presence.ts'
import type { Tx } from '../database/database.ts'
import { entryById } from '../database/entries.ts'
import type { PlanInForce } from '../database/plans.ts'
import { sha256, type ServerKey } from '../keys.ts'
import { actsAsSupervisor } from '../people/authority.ts'
import { provesSignature } from '../people/proof.ts'

/** What the server finds in an entry that it keeps in any case. */
export interface Judged {
  status: Status
  why?: string
  /** Where the envelope itself could be read. */
  envelope?: Envelope
  /** Where status is `valid`. */
  entry?: Entry
}

export interface Bench {
  tx: Tx
  key: ServerKey
  recvAt: number
  deviceState: DeviceState
  plan: PlanInForce | undefined
  /** Ids of entries before this one, in the record or in the same push. */
  knownIds: ReadonlySet<string>
  /** Entries before this one in the same push, which are not in the database yet. */
  pending: ReadonlyMap<string, Envelope>
}

type Fault = string | undefined

/** Control characters out: the path of a problem may hold a key that came from outside. */
const tidy = (text: string): string => text.replace(/\p{Cc}+/gu, ' ').slice(0, 200)

const correctedAtMs = ({ at, skew }: Envelope): number => Date.parse(at) + (skew?.ms ?? 0)

const referred = async (bench: Bench, id: string): Promise<Pick<Envelope, 'kind' | 'op'> | undefined> => {
  const pending = bench.pending.get(id)
  if (pending) return pending
  const row = await entryById(bench.tx, id)
  return row?.kind ? { kind: row.kind, op: row.op } : undefined
}

/** A correction is of the same person or of a supervisor, and what replaces the data must fit the kind that it corrects. */
const correctionFault = async (entry: Extract<Entry, { kind: 'amend' | 'withdraw' }>, bench: Bench): Promise<Fault> => {
  const target = await referred(bench, entry.data.ref)
  if (!target) return undefined
  if (target.op !== entry.op && !(await actsAsSupervisor(bench.tx, bench.plan, entry.op))) return 'role'
  if (entry.kind === 'withdraw' || !isKind(target.kind)) return undefined
  const data = kinds[target.kind].safeParse(entry.data.data)
  return data.success ? undefined : `data.data.${data.error.issues[0]?.path.join('.') ?? ''}: ${data.error.issues[0]?.message ?? ''}`
}

/** The first plan may come from any device that was let in: before it, nobody has a role. */
const planFault = async (entry: Extract<Entry, { kind: 'plan' }>, bench: Bench): Promise<Fault> => {
  const parsed = parsePlan(entry.data.plan)
  if (!parsed.ok) return `data.plan.${parsed.problems[0]?.path ?? ''}: ${parsed.problems[0]?.code ?? ''}`
  // Both stand in columns of their own, and PostgreSQL has no place for them: an entry that cannot be kept would block all behind it.
  if (!Number.isSafeInteger(entry.data.effectiveFrom)) return 'data.effectiveFrom: notWhole'
  if (/\p{Cc}/u.test(entry.data.plan.name)) return 'data.plan.name: controlCharacter'
  if (bench.plan && !(await actsAsSupervisor(bench.tx, bench.plan, entry.op))) return 'role'
  return undefined
}

const signatureFault = async (entry: Extract<Entry, { kind: 'signOff' | 'countersign' }>, bench: Bench): Promise<Fault> => {
  if (!(await actsAsSupervisor(bench.tx, bench.plan, entry.op))) return 'role'
  if (entry.data.provisional) return undefined
  const about = entry.kind === 'signOff' ? entry.data.digest : sha256(countersignAbout(entry.data))
  const signature = { person: entry.op, dev: entry.dev, about, atMs: correctedAtMs(entry), recvAt: bench.recvAt }
  return provesSignature(bench.key, entry.data.proof, signature) ? undefined : 'proof'
}

const faultOf = async (entry: Entry, bench: Bench): Promise<Fault> => {
  switch (entry.kind) {
    case 'amend':
    case 'withdraw':
      return correctionFault(entry, bench)
    case 'plan':
      return planFault(entry, bench)
    case 'signOff':
    case 'countersign':
      return signatureFault(entry, bench)
    default:
      return undefined
  }
}

export const judge = async (given: Chained, bench: Bench): Promise<Judged> => {
  const shaped = readEnvelope(given)
  const read: Pick<Judged, 'envelope'> = shaped.success ? { envelope: shaped.data } : {}
  if (bench.deviceState !== 'enrolled') return { status: 'quarantined', why: bench.deviceState === 'quarantined' ? 'fork' : bench.deviceState, ...read }
  if (given.v !== 1) return { status: 'opaque' }
  if (!shaped.success) {
    const [issue] = shaped.error.issues
    return { status: 'invalid', why: tidy(`${issue?.path.join('.') ?? ''}: ${issue?.message ?? ''}`) }
  }
  if (bench.knownIds.has(given.id)) return { status: 'invalid', why: 'repeatedId', ...read }
  const understood = understand(shaped.data)
  if (understood.status !== 'valid') return { ...read, status: understood.status, ...('why' in understood ? { why: tidy(understood.why) } : {}) }
  const fault = await faultOf(understood.entry, bench)
  return fault === undefined ? { status: 'valid', entry: understood.entry, ...read } : { status: 'invalid', why: tidy(fault), ...read }
}
