import { canonical, NotCanonical } from '../../record/canonical.ts'
import { readEnvelope } from '../../record/entry.ts'
import type { Hash } from '../../record/ids.ts'
import { signedText } from '../../record/seal.ts'
import { chained, type Chained } from '../../wire/chained.ts'
import { chainStart, linkText, seedText, thumbprintText } from '../../wire/signed-texts.ts'
import type { Sql } from '../database/database.ts'
import { entriesAfter } from '../database/entries.ts'
import type { DeviceRow, EntryRow, Tables } from '../database/tables.ts'
import { readPublicKey, sha256, verifyText } from '../keys.ts'
import type { BadLink } from './fault.ts'

const rowsAtOnce = 500

/** A device as far as the walk has come. */
export interface Known {
  row: DeviceRow
  key: NonNullable<ReturnType<typeof readPublicKey>>
  lastSeq: number
  lastHash: string
}

export const knownDevice = (row: DeviceRow): Known | BadLink => {
  const key = readPublicKey({ x: row.key_x, y: row.key_y })
  const thumbprint = sha256(thumbprintText({ kty: 'EC', crv: 'P-256', x: row.key_x, y: row.key_y }))
  const seed = sha256(seedText({ dev: row.dev, epoch: row.epoch, thumbprint }))
  if (!key || seed !== row.seed || thumbprint !== row.thumbprint) return { fault: 'device', dev: row.dev, found: row.seed, wanted: seed }
  return { row, key, lastSeq: 0, lastHash: row.seed }
}

const parsed = (body: string): Chained | undefined => {
  try {
    const value: unknown = JSON.parse(body)
    return chained.safeParse(value).success && canonical(value) === body ? (value as Chained) : undefined
  } catch (error) {
    if (error instanceof SyntaxError || error instanceof NotCanonical) return undefined
    throw error
  }
}

/** Text, hash and signature of an entry, in the record or kept aside. */
export const sealFault = (row: Pick<EntryRow, 'dev' | 'seq' | 'id' | 'h' | 'sig' | 'body'>, device: Known | undefined): BadLink | undefined => {
  const about = { dev: row.dev, seq: row.seq }
  const entry = parsed(row.body)
  if (sha256(row.body) !== row.h) return { fault: 'hash', ...about, found: sha256(row.body), wanted: row.h }
  if (entry?.dev !== row.dev || entry.seq !== row.seq || entry.id !== row.id) return { fault: 'text', ...about }
  if (!device) return { fault: 'device', ...about }
  return verifyText(device.key, signedText(row.h as Hash), row.sig) ? undefined : { fault: 'signature', ...about }
}

const entryFault = (row: EntryRow, device: Known | undefined, before: string): BadLink | undefined => {
  const about = { gseq: row.gseq, dev: row.dev, seq: row.seq }
  const seal = sealFault(row, device)
  if (seal) return { ...seal, ...about }
  const entry = JSON.parse(row.body) as Chained
  const shaped = readEnvelope(entry)
  const [kind, op] = shaped.success ? [shaped.data.kind, shaped.data.op] : [null, null]
  if (row.kind !== kind || row.op !== op) return { fault: 'text', ...about }
  if (device && (row.seq !== device.lastSeq + 1 || entry.prev !== device.lastHash)) return { fault: 'chain', ...about, found: entry.prev, wanted: device.lastHash }
  const sh = sha256(linkText({ before: before as Hash, gseq: row.gseq, h: row.h as Hash, recvAt: row.recv_at }))
  return sh === row.sh ? undefined : { fault: 'link', ...about, found: row.sh, wanted: sh }
}

/** Every entry in its order, each looked at by `see`; stops at the first that does not hold. */
export const walkEntries = async (
  sql: Sql,
  devices: ReadonlyMap<string, Known>,
  see: (row: EntryRow) => void,
): Promise<BadLink | { gseq: number; sh: string }> => {
  let [gseq, sh] = [0, chainStart as string]
  for (;;) {
    const rows = await entriesAfter(sql, gseq, rowsAtOnce)
    for (const row of rows) {
      const device = devices.get(row.dev)
      const fault = entryFault(row, device, sh)
      if (fault) return fault
      if (device) [device.lastSeq, device.lastHash] = [row.seq, row.h]
      ;[gseq, sh] = [row.gseq, row.sh]
      see(row)
    }
    if (rows.length < rowsAtOnce) return { gseq, sh }
  }
}

/** A plan's extract, by which the server knows who is a supervisor, against the entry it was taken from. */
export const planFault = (row: Tables['plans'], entry: Pick<EntryRow, 'kind' | 'body'> | undefined): BadLink | undefined => {
  const data = entry?.kind === 'plan' ? (JSON.parse(entry.body) as { data: { effectiveFrom: number; plan: { name: string; demo?: boolean; people: unknown } } }).data : undefined
  const agrees =
    data?.effectiveFrom === row.effective_from && data.plan.name === row.name && (data.plan.demo ? 1 : 0) === row.demo &&
    canonical(data.plan.people) === canonical(JSON.parse(row.people))
  return agrees ? undefined : { fault: 'plan', gseq: row.gseq }
}
