import type { PersonId } from '../plan/ids.ts'
import type { Arrived } from '../projections/line.ts'
import type { Envelope } from '../record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../record/ids.ts'
import type { DataOf, Kind } from '../record/kinds.ts'

/** Something that is said to have happened, not yet an entry: no device has signed it. `id` is what others of the same history name it by. */
export type DraftOf<K extends Kind> = { id: EntryId; kind: K; data: DataOf<K>; person: PersonId; time: number }
export type Draft = { [K in Kind]: DraftOf<K> }[Kind]

/** Kinds that can be keyed later than they happened. */
const canBeNoted: ReadonlySet<Kind> = new Set<Kind>(['reading', 'look', 'skip', 'strip', 'stripBatch', 'add', 'hold', 'release', 'run', 'note', 'close'])

/**
 * A draft as a phone can append it now: with the time at which it was noted, and naming the entries that earlier drafts have become.
 * `became` is kept by the caller: the draft's id to the id of the entry that was saved for it.
 */
export const appendable = (draft: Draft, became: ReadonlyMap<EntryId, EntryId>): { kind: Kind; data: DataOf<Kind> } => {
  const data = renamed(draft.data, became) as Record<string, unknown>
  return { kind: draft.kind, data: (canBeNoted.has(draft.kind) ? { ...data, notedAt: new Date(draft.time).toISOString() } : data) as DataOf<Kind> }
}

const renamed = (value: unknown, became: ReadonlyMap<EntryId, EntryId>): unknown => {
  if (typeof value === 'string') return became.get(value as EntryId) ?? value
  if (Array.isArray(value)) return value.map((inner) => renamed(inner, became))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, renamed(inner, became)]))
}

/** Drafts as a store would give them, so that a test or a preview can fold them without keys. The seal is empty. */
export const arrivedFrom = (drafts: readonly Draft[], dev: DeviceId, firstSeq = 1): Arrived[] =>
  drafts.map(({ id, kind, data, person, time }, index) => {
    const entry: Envelope = {
      v: 1, id, dev, seq: firstSeq + index, prev: noHash, kind, at: new Date(time).toISOString(), tz: 'UTC', sess: '00000000', mono: 0, skew: null, op: person,
      data: data as Record<string, unknown>, blobs: [],
    }
    return { entry, h: noHash }
  })

const noHash = '0'.repeat(64) as Hash
