import { renewEpoch } from './epoch.ts'
import type { ExchangeParts, Exchanging } from './exchange-parts.ts'
import { StoreFault } from './faults.ts'
import { handIn } from './hand-in.ts'
import { readIdentity } from './identity.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import { pullAll, type Pulled } from './pull.ts'
import { pushAll } from './push.ts'
import { sendReport } from './report.ts'
import { sendPhotos } from './send-photos.ts'

/** What one exchange with the server did. With a problem it did not come to its end; what is counted was done all the same. */
export interface Exchanged {
  sent: number
  received: number
  /** Own entries that this phone had lost and the server gave back. */
  regained: number
  photosSent: number
  problem?: SendProblem
}

/** A server restored while we speak to it, and again: each time the exchange begins anew, but not for ever. */
const mostEpochs = 4

/** Pushes what waits, pulls what is new, sends photos and files to hand in, and reports. */
export const exchange = async (parts: ExchangeParts): Promise<Exchanged> => {
  const done: Exchanged = { sent: 0, received: 0, regained: 0, photosSent: 0 }
  try {
    const problem = await run(parts, done)
    return problem ? { ...done, problem } : done
  } catch (thrown) {
    if (!(thrown instanceof StoreFault)) throw thrown
    return { ...done, problem: { code: 'store', fault: thrown.code, where: thrown.where } }
  }
}

const run = async (parts: ExchangeParts, done: Exchanged): Promise<SendProblem | undefined> => {
  const identity = await readIdentity(parts.store)
  if (!identity) return { code: 'notEnrolled' }
  if (identity.receipt.state === 'waiting') {
    const renewed = await renewEpoch({ ...parts, identity })
    if (!renewed.ok) return renewed.problem
  }
  let epoch = (await parts.store.cursor())?.epoch ?? identity.receipt.epoch
  let standing: SendProblem | undefined
  for (let epochs = 0; epochs < mostEpochs; epochs++) {
    const now: Exchanging = { ...parts, identity, epoch }
    const pushed = await pushAll(now)
    done.sent += pushed.sent
    // A phone whose own entries are not taken can still see the others'.
    standing = pushed.problem
    if (standing && !isUnknown(standing) && !isOfEntries(standing)) return standing
    const pulled: Pulled = pushed.epochChanged || isUnknown(standing) ? { received: 0, regained: 0, epochChanged: true } : await pullAll(now)
    done.received += pulled.received
    done.regained += pulled.regained
    // A server older than this phone's enrolment does not know it: the receipt settles that.
    const isAnotherRecord = pulled.epochChanged || isUnknown(pulled.problem)
    if (!isAnotherRecord && !pulled.problem) {
      if (standing || !(await sendsAgainWhatIsMissing(now))) break
      continue
    }
    if (!isAnotherRecord && pulled.problem?.code !== 'recordBroken') return standing ?? pulled.problem
    // A record that goes back is shown the head that it once signed; it then begins a new epoch.
    const isAdmitted = await tellsOfOldHead(parts)
    if (!isAnotherRecord && !isAdmitted) return standing ?? pulled.problem
    const renewed = await renewEpoch(now)
    if (!renewed.ok) return renewed.problem
    epoch = renewed.epoch
  }
  const photos = await sendPhotos({ ...parts, identity, epoch })
  done.photosSent = photos.sent
  const handed = await handIn({ ...parts, identity, epoch })
  const reported = await sendReport(parts)
  return standing ?? photos.problem ?? handed ?? (reported.ok ? undefined : sendProblemOf(reported.problem))
}

const isUnknown = (problem: SendProblem | undefined): boolean => problem?.code === 'unauthorised'

/** Not taken for what the entries are, or for what this server thinks of them: pulling may go well all the same. */
const isOfEntries = ({ code }: SendProblem): boolean => code === 'fork' || code === 'entryRefused' || code === 'quota' || code === 'refused'

/**
 * An own entry that was acknowledged comes back with what is pulled: that is its receipt. Where the newest one has not, the server was put
 * back to before it without saying so, and no head that this phone has seen shows it. What is missing goes back into the outbox.
 */
const sendsAgainWhatIsMissing = async ({ store, door, epoch }: Exchanging): Promise<boolean> => {
  const [head, { oldest }] = await Promise.all([store.head(), store.waiting()])
  const newest = oldest ? oldest.seq - 1 : head?.seq
  if (!head || !newest) return false
  const rows = await store.chain(head.dev, newest, 16)
  const last = rows.find(({ entry, h }) => entry.seq === newest && (oldest !== undefined || h === head.h))
  if (!last || (last.epoch === epoch && last.recvAt !== undefined)) return false
  const me = await door.call('me')
  return me.ok && me.answer.lastSeq < newest && (await store.requeue(me.answer.lastSeq + 1)) > 0
}

/** The server grants that its record no longer reaches the head that this phone has seen. */
const tellsOfOldHead = async (parts: ExchangeParts): Promise<boolean> => {
  const reported = await sendReport(parts)
  return reported.ok && ['behind', 'other', 'otherEpoch'].includes(reported.answer.witness)
}
