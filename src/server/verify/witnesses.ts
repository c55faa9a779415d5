import * as z from 'zod'
import { head as headSchema, type Head } from '../../record/kinds/sign-off.ts'
import { reportRequest } from '../../wire/report.ts'
import { headText } from '../../wire/signed-texts.ts'
import type { Sql } from '../database/database.ts'
import type { DeviceRow, EntryRow, Tables } from '../database/tables.ts'
import { readPublicKey, verifyText } from '../keys.ts'
import type { BadLink } from './fault.ts'

const signed = z.looseObject({ data: z.looseObject({ head: headSchema }) })

/** The head that a sign-off has in it, under the signature of the phone. */
export const headInEntry = (row: Pick<EntryRow, 'kind' | 'body'>): Head | undefined => {
  if (row.kind !== 'signOff') return undefined
  const read = signed.safeParse(JSON.parse(row.body))
  return read.success ? read.data.data.head : undefined
}

export const headInReport = (row: Pick<DeviceRow, 'report'>): Head | undefined => {
  const read = reportRequest.safeParse(JSON.parse(row.report ?? 'null'))
  return read.success ? (read.data.witness ?? undefined) : undefined
}

/**
 * Up to which number a head of an epoch must still be found in the record: to the end, or to where the first restore since then had put it back.
 * Undefined for an epoch that this database does not know, because it was put back to before it.
 */
const holdsUpTo = (epochs: readonly Tables['epochs'][], epoch: string): number | undefined => {
  const place = epochs.findIndex((it) => it.epoch === epoch)
  return place < 0 ? undefined : Math.min(Infinity, ...epochs.slice(place + 1).map(({ from_gseq }) => from_gseq))
}

/**
 * The server chain has no key in it: who has the database could work it out anew from any point. The heads that the server signed, and that stand
 * in sign-offs and on phones, could not be made anew with it.
 */
export const witnessFault = async (
  sql: Sql,
  heads: readonly Head[],
  given: { epochs: readonly Tables['epochs'][]; serverKey: { x: string; y: string } | undefined; reach: number },
): Promise<BadLink | { counted: number }> => {
  const key = given.serverKey && readPublicKey(given.serverKey)
  let counted = 0
  for (const head of heads) {
    const most = holdsUpTo(given.epochs, head.epoch)
    if (!key || most === undefined || head.gseq === 0 || head.gseq > most || !verifyText(key, headText(head), head.sig)) continue
    const row = await sql.selectFrom('entries').select('sh').where('gseq', '=', head.gseq).executeTakeFirst()
    if (row?.sh !== head.sh) return { fault: 'witness', gseq: head.gseq, found: row?.sh ?? `the record ends at ${given.reach}`, wanted: `${head.sh} (signed ${head.time})` }
    counted += 1
  }
  return { counted }
}
