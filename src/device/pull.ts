import * as z from 'zod/mini'
import type { DeviceId } from '../record/ids.ts'
import { head as headShape, type Head } from '../record/kinds/sign-off.ts'
import type { PublicKey } from '../record/seal.ts'
import { largestPull } from '../wire/largest.ts'
import { publicKey } from '../wire/receipt.ts'
import { chainStart } from '../wire/signed-texts.ts'
import type { Exchanging } from './exchange-parts.ts'
import type { Kept } from './kept.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import type { Cursor, Store } from './store.ts'
import { lenientPage, verifyPage, type LenientPage } from './verify-page.ts'

export interface Pulled {
  received: number
  regained: number
  epochChanged?: boolean
  problem?: SendProblem
}

export const knownDevice = z.looseObject({ name: z.string(), key: publicKey, state: z.string() })

/** The highest head seen in this epoch: the server's record must always reach at least there. */
export const readWitness = async (store: Store): Promise<Head | undefined> => headShape.safeParse(await store.take('singles', 'witness')).data

/** A page that is what it says it is, or why there is none. */
type Coming = { ok: true; from: Cursor; page: LenientPage; entries: Kept[]; next: Cursor } | { ok: false; why: Pick<Pulled, 'problem' | 'epochChanged'> }

const keepWitness = (store: Store, seen: Head): Promise<unknown> =>
  store.revise('singles', 'witness', (raw) => {
    const before = headShape.safeParse(raw).data
    return before?.epoch === seen.epoch && before.gseq > seen.gseq ? before : seen
  })

/**
 * Takes in the server's record page by page, each verified, and applied in one transaction together with the place after it. The next page is
 * fetched and verified while the last is being stored.
 */
export const pullAll = async (parts: Exchanging): Promise<Pulled> => {
  const { store, door, epoch, onEntries } = parts
  const total: Pulled = { received: 0, regained: 0 }
  const keys = new Map<DeviceId, PublicKey>()
  let witness: Head | undefined

  const ask = async (from: Cursor): Promise<Coming> => {
    const answered = await door.read('pull', lenientPage, { query: { epoch: from.epoch, after: from.after, limit: largestPull } })
    if (!answered.ok) {
      const { problem } = answered
      return { ok: false, why: problem.code === 'refused' && problem.refusal.error === 'epoch' ? { epochChanged: true } : { problem: sendProblemOf(problem) } }
    }
    const page = answered.answer
    await learnKeys(store, keys, page.devices)
    const verified = await verifyPage(page, { from, serverKey: parts.identity.receipt.serverKey, keyOf: (dev) => keys.get(dev), verifier: parts.verifier })
    return verified.ok ? { ...verified, from, page } : { ok: false, why: { problem: verified.problem } }
  }

  for (let coming = ask(await cursorIn(store, epoch)); ; ) {
    const come = await coming
    if (!come.ok) return { ...total, ...come.why }
    const { page, from, entries, next } = come
    if (witness?.sh !== page.head.sh) await keepWitness(store, (witness = page.head))
    if (!page.entries.length) return total
    if (page.more) {
      coming = ask(next)
      coming.catch(() => undefined)
    }
    const { applied, changed, regained } = await store.apply({ from, entries, devices: page.devices, next })
    total.received += applied ? page.entries.length : 0
    total.regained += regained
    if (changed.length) onEntries(changed)
    parts.onToCome?.(Math.max(0, page.head.gseq - next.after))
    if (!page.more) return total
    // Somebody else has moved the place: what was asked for from here is of no use.
    if (!applied) coming = ask(await cursorIn(store, epoch))
  }
}

const cursorIn = async (store: Store, epoch: string): Promise<Cursor> => {
  const cursor = await store.cursor()
  if (cursor?.epoch === epoch) return cursor
  const start: Cursor = { epoch, after: 0, sh: chainStart }
  await store.startCursor(start)
  return start
}

/** A device's key is the one under which it was first seen: a server that later names another is not believed. */
const learnKeys = async (store: Store, keys: Map<DeviceId, PublicKey>, named: readonly { dev: DeviceId; key: PublicKey }[]): Promise<void> => {
  for (const { dev, key } of named) if (!keys.has(dev)) keys.set(dev, knownDevice.safeParse(await store.take('devices', dev)).data?.key ?? key)
}
