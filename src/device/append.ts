import type { PersonId } from '../plan/ids.ts'
import { canonical, NotCanonical } from '../record/canonical.ts'
import type { Envelope } from '../record/entry.ts'
import { kinds, type DataOf, type Kind } from '../record/kinds.ts'
import { seal } from '../record/seal.ts'
import { largestPush } from '../wire/largest.ts'
import { clockText, type Clock } from './clock.ts'
import { StoreFault } from './faults.ts'
import { readIdentity } from './identity.ts'
import { correctedTime, type Counted } from './kept.ts'
import type { Locks } from './locks.ts'
import type { Photo } from './photo.ts'
import { parseSkew, skewNow } from './skew.ts'
import type { Store } from './store.ts'
import { uuid7 } from './uuid7.ts'

export interface AppendParts {
  store: Store
  clock: Clock
  locks: Locks
  randomBytes(count: number): Uint8Array
  /** Called after the entry is durable, before `append` resolves. */
  onSaved(saved: Counted): void
}

/** Why an entry was not taken. Nothing was saved, and what was keyed is still on the screen. */
export type AppendRefusal =
  | { code: 'notEnrolled' }
  /** The data does not fit its kind, at this path. */
  | { code: 'unfit'; path: string; detail: string }
  | { code: 'tooLarge'; bytes: number; allowedBytes: number }

export type Appended = { ok: true; saved: Counted } | { ok: false; refusal: AppendRefusal }

export interface Who {
  person: PersonId | null
  photos?: readonly Photo[]
}

export type Append = <K extends Kind>(kind: K, data: DataOf<K>, who: Who) => Promise<Appended>

/** Each loss of the race means that somebody else saved, so this many in a row is no race but a fault. */
const mostTries = 100

/**
 * Appends to this device's chain: reads the head, builds, hashes and signs outside any transaction (IndexedDB would close it), then
 * one durable transaction that saves only if the head is still the same. Resolves when the entry is on the disk.
 */
export const createAppend = ({ store, clock, locks, randomBytes, onSaved }: AppendParts): Append => {
  const attempt = async (kind: Kind, data: Record<string, unknown>, who: Who): Promise<Appended | 'moved'> => {
    const [identity, head, skew] = await Promise.all([readIdentity(store), store.head(), store.take('singles', 'skew')])
    if (!identity || !head) return { ok: false, refusal: { code: 'notEnrolled' } }
    // Enrolled anew in another tab between the two reads.
    if (head.dev !== identity.receipt.dev) return 'moved'
    const wall = clock.wall()
    const photos = who.photos ?? []
    const entry: Envelope = {
      v: 1,
      id: uuid7(wall, randomBytes(10)),
      dev: identity.receipt.dev,
      seq: head.seq + 1,
      prev: head.h,
      kind,
      at: clockText(clock, wall),
      tz: clock.zone(),
      sess: clock.session,
      mono: clock.monotonic(),
      skew: skewNow(clock, parseSkew(skew)),
      op: who.person,
      data,
      blobs: photos.map(({ sha256 }) => sha256),
    }
    const bytes = new TextEncoder().encode(canonical(entry)).length
    const allowedBytes = (kind === 'plan' ? largestPush.bytesPerPlan : largestPush.bytesPerEntry) - sealBytes
    if (bytes > allowedBytes) return { ok: false, refusal: { code: 'tooLarge', bytes, allowedBytes } }
    const saved: Counted = { status: 'valid', ...(await seal(entry, identity.signer)), time: correctedTime(entry) }
    const blobs = photos.map(({ sha256, bytes: picture }) => ({ sha256, bytes: picture, of: entry.id, sent: 0 as const }))
    return (await store.append(saved, head, blobs)) === 'saved' ? { ok: true, saved } : 'moved'
  }

  return async (kind, data, who) => {
    const fit = fitted(kind, data)
    if (!fit.ok) return fit
    return locks.inTurn('append', async () => {
      for (let tries = 0; tries < mostTries; tries++) {
        const outcome = await attempt(kind, fit.data, who)
        if (outcome === 'moved') continue
        if (outcome.ok) onSaved(outcome.saved)
        return outcome
      }
      throw new StoreFault('contended', 'append')
    })
  }
}

/** Hash, signature and their names around an entry on its way. */
const sealBytes = 256

const fitted = (kind: Kind, data: unknown): { ok: true; data: Record<string, unknown> } | { ok: false; refusal: AppendRefusal } => {
  const parsed = kinds[kind].safeParse(data)
  if (!parsed.success) {
    const [issue] = parsed.error.issues
    return { ok: false, refusal: { code: 'unfit', path: issue?.path.join('.') ?? '', detail: issue?.message ?? '' } }
  }
  try {
    // What is `undefined` is left out here, so that what is kept is exactly what was hashed.
    return { ok: true, data: (JSON.parse(canonical({ data: parsed.data })) as { data: Record<string, unknown> }).data }
  } catch (thrown) {
    if (!(thrown instanceof NotCanonical)) throw thrown
    return { ok: false, refusal: { code: 'unfit', path: thrown.path, detail: thrown.why } }
  }
}
