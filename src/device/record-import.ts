import * as z from 'zod/mini'
import type { Sealed } from '../record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../record/ids.ts'
import { canonical, NotCanonical } from '../record/canonical.ts'
import { sealProblem, type PublicKey, type Verifier } from '../record/seal.ts'
import { recordFile, type RecordFile } from '../wire/record-file.ts'
import { shiftFile, type ShiftFile } from '../wire/shift-file.ts'
import { largestPush } from '../wire/largest.ts'
import type { Kept } from './kept.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import type { Door } from './server-door.ts'
import type { Store } from './store.ts'

type One = RecordFile['entries'][number]

/** Why an entry of a file is left where it is. */
export type LeftWhy =
  /** Its content is not what was sealed, or its device did not sign it. */
  | 'hash'
  | 'signature'
  /** Of a device that this laboratory does not know, or knows by another key. */
  | 'unknownDevice'
  /** Another entry stands at its number: nothing is ever overwritten. */
  | 'conflict'
  /** An entry before it is neither in the record nor in the file. */
  | 'gap'

export interface RecordFound {
  format: 'bathkeeper-record' | 'bathkeeper-shift'
  laboratory: string
  entries: number
  devices: number
  /** In the record already, the very same: nothing to do. */
  here: number
  /** Can be brought back, by device in the order of their numbers. */
  missing: { dev: DeviceId; name: string; entries: Sealed[] }[]
  left: { id: EntryId; dev: DeviceId; seq: number; why: LeftWhy }[]
}

/** How many entries are done with, of how many. */
export type Progress = (done: number, of: number) => void
/** Told of now and then: every entry would cost more than its look. */
const each = 50
/** Lets the page draw what it was told. */
const drawn = (): Promise<void> => new Promise((passed) => setTimeout(passed))

export type RecordProblem = { code: 'notJson' } | { code: 'notARecord'; path: string }

interface Around {
  store: Store
  verifier: Verifier
  /** The devices of this laboratory, as this phone verified them. */
  devices: readonly { dev: DeviceId; key: PublicKey; seed?: Hash | undefined }[]
  own: DeviceId | undefined
  /** The server's database as this phone last saw it: an entry from before it was restored may be lost there. */
  epoch: string | undefined
  onProgress?: Progress
}

/**
 * Looks through an export before anything is done with it: what the record has already, what it lacks and can take, and what is left out and why. The
 * phone must have fetched everything first.
 */
export const lookThroughRecord = async (text: string, around: Around): Promise<{ ok: true; found: RecordFound } | { ok: false; problem: RecordProblem }> => {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch {
    return { ok: false, problem: { code: 'notJson' } }
  }
  const parsed = z.union([recordFile, shiftFile]).safeParse(raw)
  if (!parsed.success) return { ok: false, problem: { code: 'notARecord', path: pathOf(raw) } }
  const file: RecordFile | ShiftFile = parsed.data
  const found: RecordFound = { format: file.format, laboratory: file.laboratory, entries: file.entries.length, devices: new Set(file.entries.map(({ entry }) => entry.dev)).size, here: 0, missing: [], left: [] }
  let looked = 0
  const onEntry = async (): Promise<void> => {
    if (looked++ % each) return
    around.onProgress?.(looked, found.entries)
    await drawn()
  }
  const byDevice = new Map<DeviceId, One[]>()
  for (const one of file.entries) byDevice.set(one.entry.dev, [...(byDevice.get(one.entry.dev) ?? []), one])
  for (const [dev, entries] of byDevice) {
    const name = file.devices.find((it) => it.dev === dev)?.name ?? dev
    const brought = await lookThroughDevice(entries.sort((a, b) => a.entry.seq - b.entry.seq), dev, around, found, onEntry)
    if (brought.length) found.missing.push({ dev, name, entries: brought })
  }
  return { ok: true, found }
}

const lookThroughDevice = async (entries: readonly One[], dev: DeviceId, around: Around, found: RecordFound, onEntry: () => Promise<void>): Promise<Sealed[]> => {
  const { store, verifier, devices } = around
  const known = devices.find((it) => it.dev === dev)
  const first = entries[0]!.entry.seq
  // From the number before, to know whether the first one follows.
  const rows = new Map<number, Kept>()
  for (let at = Math.max(1, first - 1); ; ) {
    const page = await store.chain(dev, at, 200)
    for (const row of page) if (isInRecord(row, around)) rows.set(row.entry.seq, row)
    const last = page.at(-1)?.entry.seq
    if (last === undefined || last > entries.at(-1)!.entry.seq) break
    at = last + 1
  }
  const brought: Sealed[] = []
  const leave = ({ entry }: One, why: LeftWhy): void => void found.left.push({ id: entry.id, dev, seq: entry.seq, why })
  for (const one of entries) {
    await onEntry()
    const { entry, h, sig } = one
    const there = rows.get(entry.seq)
    if (there) {
      if (there.h !== h || there.entry.id !== entry.id) leave(one, 'conflict')
      // The hash is the same; whether the content is, the file must show.
      else if (await isAsHashed(one, verifier)) found.here++
      else leave(one, 'hash')
      continue
    }
    if (!known) {
      leave(one, 'unknownDevice')
      continue
    }
    const problem = await problemOf(one, known.key, verifier)
    if (problem) {
      leave(one, problem)
      continue
    }
    const before = entry.seq === 1 ? known.seed : (brought.at(-1)?.entry.seq === entry.seq - 1 ? brought.at(-1)?.h : rows.get(entry.seq - 1)?.h)
    if (before === undefined && entry.seq > 1) leave(one, 'gap')
    else if (before !== undefined && before !== entry.prev) leave(one, 'conflict')
    else brought.push({ entry: entry as Sealed['entry'], h, sig })
  }
  return brought
}

/** Whether the server has it, in the database that it has now; an own entry that waits here goes up by itself. */
const isInRecord = (row: Kept, { epoch, own }: Around): boolean => (row.gseq !== undefined && row.epoch === epoch) || (row.gseq === undefined && row.entry.dev === own)

const isAsHashed = async ({ entry, h }: One, verifier: Verifier): Promise<boolean> => {
  try {
    return (await verifier.sha256(canonical(entry))) === h
  } catch (thrown) {
    if (thrown instanceof NotCanonical) return false
    throw thrown
  }
}

const problemOf = async ({ entry, h, sig }: One, key: PublicKey, verifier: Verifier): Promise<'hash' | 'signature' | undefined> => {
  try {
    return await sealProblem({ entry, h, sig } as Sealed, key, verifier)
  } catch (thrown) {
    if (thrown instanceof NotCanonical) return 'hash'
    throw thrown
  }
}

/** Where the file stops being one: of the format that it says it is. */
const pathOf = (raw: unknown): string => {
  const format = typeof raw === 'object' && raw !== null && 'format' in raw ? raw.format : undefined
  const schema = format === 'bathkeeper-shift' ? shiftFile : format === 'bathkeeper-record' ? recordFile : undefined
  return schema ? (schema.safeParse(raw).error?.issues[0]?.path.join('.') ?? '') : 'format'
}

export interface BroughtBack {
  brought: number
  /** What the server said where it stopped, by device. */
  refused: { dev: DeviceId; code: string }[]
  problem?: SendProblem
}

/** Hands the missing entries in. What the server has meanwhile it acknowledges and leaves as it is, so that doing it twice does no harm. */
export const bringBack = async ({ missing }: RecordFound, door: Door, onProgress?: Progress): Promise<BroughtBack> => {
  const done: BroughtBack = { brought: 0, refused: [] }
  const of = missing.reduce((sum, { entries }) => sum + entries.length, 0)
  onProgress?.(0, of)
  for (const { dev, entries } of missing) {
    for (const chunk of chunks(entries)) {
      const answered = await door.call('importRecord', { body: { v: 1, dev, entries: chunk }, timeoutMs: 120_000 })
      if (!answered.ok) {
        if (answered.problem.code !== 'refused') return { ...done, problem: sendProblemOf(answered.problem) }
        done.refused.push({ dev, code: answered.problem.refusal.error })
        break
      }
      done.brought += answered.answer.acks.length
      onProgress?.(done.brought, of)
      const code = answered.answer.error?.code
      if (code === undefined) continue
      done.refused.push({ dev, code })
      // Of a device that is no longer in use the entries are kept all the same.
      if (code !== 'revoked' && code !== 'retired' && code !== 'quarantined') break
    }
  }
  return done
}

/** As many as one request may carry. */
const chunks = (entries: readonly Sealed[]): Sealed[][] => {
  const all: Sealed[][] = []
  let bytes = 0
  for (const one of entries) {
    const size = new TextEncoder().encode(JSON.stringify(one)).length
    const last = all.at(-1)
    if (!last || last.length >= largestPush.entries || bytes + size > largestPush.bytes - 4096) {
      all.push([one])
      bytes = size
    } else {
      last.push(one)
      bytes += size
    }
  }
  return all
}
