import * as z from 'zod/mini'
import type { DeviceId } from '../record/ids.ts'
import { head as headShape, type Head } from '../record/kinds/sign-off.ts'
import type { PublicKey } from '../record/seal.ts'
import { largestPull } from '../wire/largest.ts'
import { publicKey } from '../wire/receipt.ts'
import { chainStart } from '../wire/signed-texts.ts'
import type { Exchanging } from './exchange-parts.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'
import type { Cursor, Store } from './store.ts'
import { lenientPage, verifyPage } from './verify-page.ts'

export interface Pulled {
  received: number
  regained: number
  epochChanged?: boolean
  problem?: SendProblem
}

export const knownDevice = z.looseObject({ name: z.string(), key: publicKey, state: z.string() })

/** The highest head seen in this epoch: the server's record must always reach at least there. */
export const readWitness = async (store: Store): Promise<Head | undefined> => headShape.safeParse(await store.take('singles', 'witness')).data

const keepWitness = (store: Store, seen: Head): Promise<unknown> =>
  store.revise('singles', 'witness', (raw) => {
    const before = headShape.safeParse(raw).data
    return before?.epoch === seen.epoch && before.gseq > seen.gseq ? before : seen
  })

/** Takes in the server's record page by page, each verified, and applied in one transaction together with the place after it. */
export const pullAll = async (parts: Exchanging): Promise<Pulled> => {
  const { store, door, epoch, onEntries } = parts
  const total: Pulled = { received: 0, regained: 0 }
  for (;;) {
    const from = await cursorIn(store, epoch)
    const answered = await door.read('pull', lenientPage, { query: { epoch: from.epoch, after: from.after, limit: largestPull } })
    if (!answered.ok) {
      const { problem } = answered
      if (problem.code === 'refused' && problem.refusal.error === 'epoch') return { ...total, epochChanged: true }
      return { ...total, problem: sendProblemOf(problem) }
    }
    const page = answered.answer
    const verified = await verifyPage(page, { from, serverKey: parts.identity.receipt.serverKey, keyOf: await keysFor(store, page.devices), verifier: parts.verifier })
    if (!verified.ok) return { ...total, problem: verified.problem }
    await keepWitness(store, page.head)
    if (!page.entries.length) return total
    const { applied, changed, regained } = await store.apply({ from, entries: verified.entries, devices: page.devices, next: verified.next })
    total.received += applied ? page.entries.length : 0
    total.regained += regained
    if (changed.length) onEntries(changed)
    if (!page.more) return total
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
const keysFor = async (store: Store, named: readonly { dev: DeviceId; key: PublicKey }[]): Promise<(dev: DeviceId) => PublicKey | undefined> => {
  const keys = new Map<DeviceId, PublicKey>()
  for (const { dev, key } of named) keys.set(dev, knownDevice.safeParse(await store.take('devices', dev)).data?.key ?? key)
  return (dev) => keys.get(dev)
}
