import type { Head } from '../../record/kinds/sign-off.ts'
import { headText } from '../../wire/signed-texts.ts'
import type { ReportAnswer } from '../../wire/report.ts'
import { noteReport } from '../database/devices.ts'
import { entryAt } from '../database/entries.ts'
import { beginEpoch, readEpoch } from '../database/facts.ts'
import { lockReach } from '../database/head.ts'
import { note } from '../database/log.ts'
import { currentHead } from '../ingest/push.ts'
import type { Parts } from '../parts.ts'
import type { Handler } from './given.ts'

type Witness = ReportAnswer['witness']

/**
 * A head that this server signed and that its record no longer has: the database was put back without the restore command, or its end was
 * cut off. Either way numbers may now name other entries, so a new epoch begins and every phone pulls and pushes again; that it happened
 * stays in the log.
 */
const lookAt = async (parts: Parts, dev: string, head: Head): Promise<Witness> => {
  if (!parts.key.verify(headText(head), head.sig)) {
    await note(parts.database.sql, parts.clock(), 'headForged', { dev })
    return 'forged'
  }
  return parts.database.transact(async (tx) => {
    const reach = await lockReach(tx)
    const epoch = await readEpoch(tx)
    if (head.epoch !== epoch) return 'otherEpoch'
    const there = head.gseq === 0 ? undefined : await entryAt(tx, head.gseq)
    const agrees = head.gseq === 0 || (head.gseq <= reach.gseq && there?.gseq === head.gseq && there.sh === head.sh)
    if (agrees) return 'agrees'
    const witness = head.gseq > reach.gseq ? 'behind' : 'other'
    const now = parts.clock()
    const detail = `witnessed ${head.gseq} ${head.sh.slice(0, 16)} of ${head.time}, have ${reach.gseq} ${reach.sh.slice(0, 16)}`
    await note(tx, now, witness === 'behind' ? 'headBehind' : 'headOther', { dev, detail })
    const next = Buffer.from(parts.random(8)).toString('hex')
    await beginEpoch(tx, { epoch: next, since: now, why: 'headWitnessed' })
    await parts.database.announce(tx, { event: 'head', data: { gseq: reach.gseq, epoch: next } })
    return witness
  })
}

export const report: Handler<'report'> = async ({ parts, device, request }) => {
  const witness = request.witness ? await lookAt(parts, device.dev, request.witness) : 'none'
  const now = parts.clock()
  await noteReport(parts.database.sql, device.dev, JSON.stringify(request), now)
  await parts.database.announce(parts.database.sql, { event: 'devices', data: {} })
  return { witness, serverTime: now, head: await currentHead(parts) }
}
