import type { Exchanging } from './exchange-parts.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'

/** A photo over a slow network takes its time. */
const photoTimeoutMs = 120_000

export interface PhotosSent {
  sent: number
  problem?: SendProblem
}

/**
 * Sends the photos whose entry the server has. What was cut off is begun again; what is there already is not sent twice. A photo that
 * the server will not take stays on the phone and holds up no other.
 */
export const sendPhotos = async ({ store, door, epoch }: Exchanging): Promise<PhotosSent> => {
  let sent = 0
  let refused: SendProblem | undefined
  for (const sha256 of await store.unsentBlobs()) {
    const blob = await store.blob(sha256)
    const [entry] = blob ? await store.byIds([blob.of]) : []
    if (!blob || entry?.gseq === undefined || entry.epoch !== epoch) continue
    const places = { sha256 }
    const there = await door.open('getBlob', { places, method: 'HEAD' })
    if (!there.ok) {
      const problem = sendProblemOf(there.problem)
      // HEAD has no body, so a plain 404 shows as an answer without one.
      const isMissing = (problem.code === 'refused' && problem.error === 'notFound') || (problem.code === 'strange' && problem.status === 404)
      if (!isMissing) return { sent, problem }
      const put = await door.call('putBlob', { places, bytes: new Uint8Array(blob.bytes), timeoutMs: photoTimeoutMs })
      if (!put.ok) {
        const putProblem = sendProblemOf(put.problem)
        if (putProblem.code !== 'refused') return { sent, problem: putProblem }
        refused = putProblem
        continue
      }
    }
    await store.blobSent(sha256)
    sent++
  }
  return { sent, ...(refused ? { problem: refused } : {}) }
}
