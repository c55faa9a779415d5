import * as z from 'zod/mini'
import { plainCode } from '../wire/code.ts'
import { receipt as receiptShape, type Receipt } from '../wire/receipt.ts'
import { enrolText, receiptText, seedText, thumbprintText, digitsOf } from '../wire/signed-texts.ts'
import { keepDeviceName, readDeviceName } from './device-name.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import { formerOf } from './former.ts'
import { readIdentity } from './identity.ts'
import type { Locks } from './locks.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import type { Beginning, Store } from './store.ts'
import { createKeyPair, publicHalf, webHasher, webSigner } from './web-seal.ts'

export interface EnrolRequest {
  /** As keyed or out of the QR. */
  code: string
  /** What people call this phone. */
  name: string
  firstSupervisor?: { name: string; passphrase: string }
}

export type Enrolled =
  | { ok: true; receipt: Receipt }
  | { ok: false; problem: SendProblem | { code: 'forgedReceipt' } | { code: 'savedMeanwhile' } }

export interface Enrolment {
  /** Asks in with a one-time code. Asked again after a lost answer, it shows the same key and gets the same receipt. */
  enrol(request: EnrolRequest): Promise<Enrolled>
  /** Whether a supervisor has confirmed meanwhile. */
  isConfirmed(): Promise<{ ok: true; confirmed: boolean } | { ok: false; problem: SendProblem }>
  /** Takes over the receipt that comes with the wiping of an invented laboratory: everything of it leaves this phone. */
  wiped(receipt: Receipt): Promise<void>
}

export const createEnrolment = (parts: Pick<ExchangeParts, 'store' | 'door' | 'clock' | 'verifier'> & { locks: Locks }): Enrolment => {
  const { store, door, verifier, locks } = parts

  return {
    async enrol({ code, name, firstSupervisor }) {
      const keys = await pendingKeys(store)
      const key = await publicHalf(keys)
      const plain = plainCode(code)
      const sig = await webSigner(keys.privateKey).sign(enrolText(plain))
      const answered = await door.call('enrol', { body: { code: plain, key, name, sig, ...(firstSupervisor ? { firstSupervisor } : {}) } })
      if (!answered.ok) return { ok: false, problem: sendProblemOf(answered.problem) }
      const { answer: receipt } = answered
      // What the server says is held against this phone's own key, so that both screens show digits of the same one.
      const thumbprint = await webHasher.sha256(thumbprintText(key))
      const isOurs = receipt.seed === (await webHasher.sha256(seedText({ dev: receipt.dev, epoch: receipt.epoch, thumbprint })))
      const isSigned = await verifier.verify(receipt.serverKey, receiptText(receipt), receipt.sig)
      if (!isOurs || !isSigned || receipt.digits !== digitsOf(thumbprint)) return { ok: false, problem: { code: 'forgedReceipt' } }
      return locks.inTurn('append', async () => {
        const expected = await store.head()
        const beginning: Beginning = { head: { dev: receipt.dev, seq: 0, h: receipt.seed }, expected, receipt, keys, ...(await before()) }
        if ((await store.begin(beginning)) === 'moved') return { ok: false, problem: { code: 'savedMeanwhile' } }
        await store.remove('singles', 'pendingKeys')
        await keepDeviceName(store, name)
        return { ok: true, receipt }
      })
    },

    async isConfirmed() {
      const me = await door.call('me')
      if (!me.ok) return { ok: false, problem: sendProblemOf(me.problem) }
      const confirmed = me.answer.state === 'enrolled'
      if (confirmed) await store.revise('singles', 'receipt', (raw) => ({ ...receiptShape.parse(raw), state: 'enrolled' }))
      return { ok: true, confirmed }
    },

    wiped: (receipt) =>
      locks.inTurn('append', async () => {
        const identity = await readIdentity(store)
        if (!identity) return
        await store.begin({ head: { dev: receipt.dev, seq: 0, h: receipt.seed }, expected: await store.head(), receipt, keys: identity.keys, forget: true })
      }),
  }

  /** What the device that this phone was before had not sent is still to be handed in. */
  async function before(): Promise<Pick<Beginning, 'former'>> {
    const identity = await readIdentity(store)
    const former = identity && (await formerOf(store, identity, await readDeviceName(store)))
    return former ? { former: { dev: former.head.dev, row: former } } : {}
  }
}

const pair = z.strictObject({ publicKey: z.instanceof(CryptoKey), privateKey: z.instanceof(CryptoKey) })

/** Kept before the code is shown to anybody: a one-time code serves once, so a lost answer must be asked for with the same key. */
const pendingKeys = async (store: Store): Promise<CryptoKeyPair> => {
  const pending = pair.safeParse(await store.take('singles', 'pendingKeys'))
  if (pending.success) return pending.data
  const keys = await createKeyPair()
  await store.keep('singles', 'pendingKeys', keys)
  return keys
}
