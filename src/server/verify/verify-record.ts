import type { Head } from '../../record/kinds/sign-off.ts'
import type { Sql } from '../database/database.ts'
import { readDevices } from '../database/devices.ts'
import { entryCounts } from '../database/entries.ts'
import { readEpochs, readFact } from '../database/facts.ts'
import { readReach } from '../database/head.ts'
import { sha256 } from '../keys.ts'
import { knownDevice, planFault, sealFault, walkEntries, type Known } from './entries.ts'
import type { BadLink, Walked } from './fault.ts'
import { headInEntry, headInReport, witnessFault } from './witnesses.ts'

const firstBadPhoto = async (sql: Sql): Promise<BadLink | { counted: number }> => {
  const names = await sql.selectFrom('blobs').select('sha256').orderBy('sha256').execute()
  for (const { sha256: name } of names) {
    // One at a time: a year of photos does not fit into memory.
    const { data } = await sql.selectFrom('blobs').select('data').where('sha256', '=', name).executeTakeFirstOrThrow()
    if (sha256(data) !== name) return { fault: 'photo', found: sha256(data), wanted: name }
  }
  return { counted: names.length }
}

const firstBadPlan = async (sql: Sql): Promise<BadLink | undefined> => {
  for (const row of await sql.selectFrom('plans').selectAll().orderBy('gseq').execute()) {
    const entry = await sql.selectFrom('entries').select(['kind', 'body']).where('gseq', '=', row.gseq).executeTakeFirst()
    const fault = planFault(row, entry)
    if (fault) return fault
  }
  return undefined
}

/**
 * Walks the whole record: each entry's text, hash and signature, each device's chain from its seed, the server's chain to its head, then what was kept
 * aside, the plans' extracts, the photos, and the heads that were witnessed. Left out is how the server judged an entry (`status`): that is not in the
 * chain, so the counts by status are given to be looked at. `sql` should be of one moment.
 */
export const verifyRecord = async (sql: Sql): Promise<Walked> => {
  const bad = (link: BadLink): Walked => ({ ok: false, ...link })
  const devices = new Map<string, Known>()
  const heads: Head[] = []
  for (const row of await readDevices(sql)) {
    const known = knownDevice(row)
    if ('fault' in known) return bad(known)
    devices.set(row.dev, known)
    const head = headInReport(row)
    if (head) heads.push(head)
  }
  let entries = 0
  const walked = await walkEntries(sql, devices, (row) => {
    entries += 1
    const head = headInEntry(row)
    if (head) heads.push(head)
  })
  if ('fault' in walked) return bad(walked)
  const reach = await readReach(sql)
  if (reach.gseq !== walked.gseq || reach.sh !== walked.sh)
    return bad({ fault: 'head', gseq: walked.gseq, found: `${walked.gseq} ${walked.sh}`, wanted: `${reach.gseq} ${reach.sh}` })
  for (const { row, lastSeq, lastHash } of devices.values())
    if (row.last_seq !== lastSeq || row.last_hash !== lastHash)
      return bad({ fault: 'reach', dev: row.dev, seq: lastSeq, found: `${lastSeq} ${lastHash}`, wanted: `${row.last_seq} ${row.last_hash}` })
  const asides = await sql.selectFrom('asides').selectAll().orderBy('n').execute()
  for (const row of asides) {
    const fault = sealFault(row, devices.get(row.dev))
    if (fault) return bad(fault)
  }
  const plan = await firstBadPlan(sql)
  if (plan) return bad(plan)
  const photos = await firstBadPhoto(sql)
  if ('fault' in photos) return bad(photos)
  const [x, y] = ((await readFact(sql, 'serverKey')) ?? '').split('.')
  const witnesses = await witnessFault(sql, heads, { epochs: await readEpochs(sql), serverKey: x && y ? { x, y } : undefined, reach: reach.gseq })
  if ('fault' in witnesses) return bad(witnesses)
  const byStatus = new Map((await entryCounts(sql)).map(({ status, count }) => [status, count]))
  return { ok: true, entries, devices: devices.size, asides: asides.length, photos: photos.counted, witnesses: witnesses.counted, byStatus, ...reach }
}
