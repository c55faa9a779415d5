import type { ReportAnswer } from '../wire/report.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import { readWitness } from './pull.ts'
import type { Answered } from './server-door.ts'
import { parseSkew } from './skew.ts'

/** Tells the server what waits here and which of its heads this phone has seen. */
export const sendReport = async ({ store, door, about }: ExchangeParts): Promise<Answered<ReportAnswer>> => {
  const [waiting, blobs, skew, witness, told] = await Promise.all([
    store.waiting(),
    store.unsentBlobs(),
    store.take('singles', 'skew'),
    readWitness(store),
    about(),
  ])
  const measured = parseSkew(skew)
  return door.call('report', {
    body: {
      waiting: waiting.count,
      oldestWaitingAt: waiting.oldest?.savedAt ?? null,
      waitingBlobs: blobs.length,
      skew: measured ? { ms: measured.ms, within: measured.within } : null,
      witness: witness ?? null,
      ...told,
    },
  })
}
