import type { EnrolAgainRequest } from '../wire/hello.ts'
import { receipt as receiptShape } from '../wire/receipt.ts'
import { enrolText } from '../wire/signed-texts.ts'
import { readDeviceName } from './device-name.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import type { Identity } from './identity.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import type { Store } from './store.ts'
import { publicHalf } from './web-seal.ts'

export type Renewed = { ok: true; epoch: string } | { ok: false; problem: SendProblem }

/**
 * The server's database is another one than before: it was restored from a backup, or its end was cut off. Own entries that it lacks
 * go back into the outbox, from there on as ever; the record is pulled anew from its start. A server so old that it does not know
 * this phone is shown the receipt that it once signed, and a supervisor confirms again.
 */
export const renewEpoch = async ({ store, door, identity }: ExchangeParts & { identity: Identity }): Promise<Renewed> => {
  const me = await door.call('me')
  if (!me.ok) {
    const problem = sendProblemOf(me.problem)
    return problem.code === 'unauthorised' ? enrolAgain({ store, door, identity }) : { ok: false, problem }
  }
  const { epoch, lastSeq, state } = me.answer
  if (state === 'waiting') return { ok: false, problem: { code: 'notConfirmed' } }
  const head = await store.head()
  // The last one that the server has goes again: where a copied phone has written another history meanwhile, this shows it.
  await store.requeue(Math.max(1, Math.min(lastSeq, head?.seq ?? 0)))
  await store.offerBlobsAgain()
  await setState(store, 'enrolled')
  return { ok: true, epoch }
}

export const enrolAgainRequestOf = async ({ receipt, keys, signer }: Identity, name: string): Promise<EnrolAgainRequest> => {
  const { dev, epoch, seed, sig } = receipt
  return { receipt: { dev, epoch, seed, sig }, key: await publicHalf(keys), name, sig: await signer.sign(enrolText(sig)) }
}

/** Shows the receipt to a server that does not know this phone. */
const enrolAgain = async ({ store, door, identity }: Pick<ExchangeParts, 'store' | 'door'> & { identity: Identity }): Promise<Renewed> => {
  const answered = await door.call('enrolAgain', { body: await enrolAgainRequestOf(identity, await readDeviceName(store)) })
  if (!answered.ok) return { ok: false, problem: sendProblemOf(answered.problem) }
  await setState(store, answered.answer.state)
  await store.requeue(1)
  return { ok: false, problem: { code: 'notConfirmed' } }
}

/** The receipt stays as it was signed; only whether a supervisor has confirmed it changes. */
const setState = async (store: Store, state: 'waiting' | 'enrolled'): Promise<void> => {
  await store.revise('singles', 'receipt', (raw) => ({ ...receiptShape.parse(raw), state }))
}
