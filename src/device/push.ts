import type { Sealed } from '../record/entry.ts'
import { wireVersion, type PushAnswer } from '../wire/messages.ts'
import type { Exchanging } from './exchange-parts.ts'
import { batchAfter, nextBatch } from './outbox.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'

type PushError = NonNullable<PushAnswer['error']>

export interface Pushed {
  sent: number
  /** The server has another database than the one this phone last spoke to. */
  epochChanged?: boolean
  problem?: SendProblem
}

/** How often the server may send this phone back to an earlier entry before it is taken to contradict itself. */
const mostReturns = 3

/**
 * Sends what waits, oldest first, until nothing waits. Entries leave the outbox for one reason only: an acknowledgement that names
 * their id. An answer that got lost costs nothing, as sending again is answered with the same acknowledgements.
 */
export const pushAll = async ({ store, door, identity, epoch, onSent }: Exchanging): Promise<Pushed> => {
  const { dev } = identity.receipt
  const send = (entries: Sealed[]) => ({
    entries,
    answered: inTime(door.call('push', { body: { v: wireVersion, dev, epoch, entries } })),
    // Read while these are on their way; sent only when all of these are acknowledged.
    following: inTime(batchAfter(store, dev, entries.at(-1)!)),
  })
  const sendOldest = async () => {
    const { oldest } = await store.waiting()
    return oldest && send(await nextBatch(store, dev, oldest))
  }
  let sent = 0
  let returns = 0
  for (let pushed = await sendOldest(); pushed; ) {
    const { entries, following } = pushed
    const answered = await pushed.answered
    if (!answered.ok) return { sent, problem: sendProblemOf(answered.problem) }
    const { acks, error, lastSeq } = answered.answer
    const isWhole = !error && acks.length === entries.length
    const after = isWhole ? await following : []
    // On their way while these are taken out of the outbox.
    const next = after.length ? send(after) : undefined
    const gone = await store.acknowledge(acks)
    sent += gone.length
    if (gone.length) onSent(gone)
    const oldest = entries[0]!.entry
    if (!error) {
      if (!next && !gone.length && (await store.waiting()).oldest?.seq === oldest.seq) return { sent, problem: { code: 'strange', status: 200, detail: 'no acks' } }
      pushed = next ?? (await sendOldest())
      continue
    }
    if (error.code === 'epoch') return { sent, epochChanged: true }
    if (isStanding(error.code)) {
      // Taken in all the same, so the rest is sent too; then it is said.
      pushed = gone.length ? await sendOldest() : undefined
      if (pushed) continue
      return { sent, problem: { code: error.code } }
    }
    if ((error.code === 'gap' || error.code === 'chain') && error.want !== undefined && error.want < oldest.seq && returns++ < mostReturns) {
      if ((await store.requeue(error.want)) > 0) {
        pushed = await sendOldest()
        continue
      }
    }
    return { sent, problem: problemOf(error, lastSeq) }
  }
  return { sent }
}

/** For what is begun before it is waited for: that it failed is met then, if it is waited for at all. */
const inTime = <T>(begun: Promise<T>): Promise<T> => {
  begun.catch(() => undefined)
  return begun
}

const isStanding = (code: PushError['code']): code is 'quarantined' | 'revoked' | 'retired' =>
  code === 'quarantined' || code === 'revoked' || code === 'retired'

const problemOf = ({ code, seq }: PushError, lastSeq: number): SendProblem => {
  switch (code) {
    case 'fork':
      return { code, seq: seq ?? lastSeq }
    case 'quota':
      return { code }
    case 'signature':
    case 'envelope':
    case 'tooLarge':
    case 'chain':
    case 'gap':
      return { code: 'entryRefused', seq: seq ?? lastSeq + 1, why: code }
    default:
      return { code: 'refused', error: code }
  }
}
