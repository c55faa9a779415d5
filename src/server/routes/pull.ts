import type { DeviceId, Hash } from '../../record/ids.ts'
import type { Envelope } from '../../record/entry.ts'
import { chainStart } from '../../wire/signed-texts.ts'
import { largestPull } from '../../wire/largest.ts'
import { wireVersion, type PullAnswer, type Pulled } from '../../wire/messages.ts'
import type { Chained } from '../../wire/chained.ts'
import { devicesNamed } from '../database/devices.ts'
import { entriesAfter, entryAt } from '../database/entries.ts'
import { readEpoch } from '../database/facts.ts'
import { readReach } from '../database/head.ts'
import type { DeviceRow, EntryRow } from '../database/tables.ts'
import { Refused } from '../http/refused.ts'
import { signedHead } from '../signed-head.ts'
import type { Handler } from './given.ts'

/** A page ends here even where it has room for more entries: a phone must not have to take megabytes at once. */
const pageBytes = 1 << 20

/** Bodies were judged when they came in and are kept as text that is the hash's own; what is `valid` has its envelope's shape. */
const pulledFrom = (row: EntryRow): Pulled => {
  const common = {
    h: row.h as Hash, sig: row.sig, gseq: row.gseq, recvAt: row.recv_at, sh: row.sh as Hash,
    ...(row.flags === null ? {} : { flags: row.flags.split(' ') as ('skew' | 'backwards')[] }),
  }
  const body: unknown = JSON.parse(row.body)
  if (row.status === 'valid') return { status: row.status, entry: body as Envelope, ...common }
  return { status: row.status, entry: body as Chained, ...common, ...(row.why === null ? {} : { why: row.why }) }
}

const untilFull = (rows: readonly EntryRow[]): EntryRow[] => {
  let bytes = 0
  const end = rows.findIndex((row, place) => (bytes += row.body.length) > pageBytes && place > 0)
  return end < 0 ? [...rows] : rows.slice(0, end)
}

export const deviceInPage = (row: DeviceRow): PullAnswer['devices'][number] => ({
  dev: row.dev as DeviceId, name: row.name, key: { kty: 'EC', crv: 'P-256', x: row.key_x, y: row.key_y }, state: row.state, seed: row.seed as Hash,
})

export const pull: Handler<'pull'> = async ({ parts, query }) =>
  // Of one moment: a head read a moment later than the page would name entries that the page has not.
  parts.database.snapshot(async (tx) => {
    const epoch = await readEpoch(tx)
    if (query.epoch !== undefined && query.epoch !== epoch) throw new Refused('epoch', { detail: epoch })
    const reach = await readReach(tx)
    const limit = query.limit ?? largestPull
    const page = untilFull(await entriesAfter(tx, query.after, limit))
    const before = await entryAt(tx, query.after)
    const next = page.at(-1)?.gseq ?? query.after
    const now = parts.clock()
    return {
      v: wireVersion,
      epoch,
      entries: page.map(pulledFrom),
      next,
      more: next < reach.gseq,
      before: (before?.sh ?? chainStart) as Hash,
      devices: (await devicesNamed(tx, [...new Set(page.map(({ dev }) => dev))])).map(deviceInPage),
      serverTime: now,
      head: signedHead(parts.key, { epoch, reach, now }),
    }
  })

