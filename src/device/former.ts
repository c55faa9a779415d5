import * as z from 'zod/mini'
import { deviceId, hash } from '../record/ids.ts'
import { receipt } from '../wire/receipt.ts'
import { StoreFault } from './faults.ts'
import type { Identity } from './identity.ts'
import { ownChain } from './own-chain.ts'
import type { Kept } from './kept.ts'
import type { Store } from './store.ts'
import { webSigner } from './web-seal.ts'

/**
 * A device that this phone was before it was enrolled anew. Its entries stay here, and its key with them: what it had not sent is handed in
 * for it, and handed in again when the server was put back to before that.
 */
const former = () => z.strictObject({
  receipt,
  keys: z.strictObject({ publicKey: z.instanceof(CryptoKey), privateKey: z.instanceof(CryptoKey) }),
  name: z.string(),
  head: z.strictObject({ dev: deviceId, seq: z.int(), h: hash }),
  /** Number of the first entry that it had not sent, how many there were, and when that one was saved. */
  from: z.int(),
  unsent: z.int(),
  oldestAt: z.optional(z.number()),
  /** The server's database that has them all. */
  handedInto: z.optional(z.string()),
})
export type Former = z.infer<ReturnType<typeof former>>

export const readFormer = (raw: unknown, where: string): Former => {
  const parsed = former().safeParse(raw)
  if (!parsed.success) throw new StoreFault('corrupt', where, parsed.error)
  return parsed.data
}

/** What this phone is now, as it will be kept when it becomes another device; undefined where it has written nothing. */
export const formerOf = async (store: Store, { receipt: given, keys }: Identity, name: string): Promise<Former | undefined> => {
  const [head, { count, oldest }] = await Promise.all([store.head(), store.waiting()])
  if (!head || head.dev !== given.dev || head.seq === 0) return undefined
  return { receipt: given, keys, name, head, from: oldest?.seq ?? head.seq + 1, unsent: count, ...(oldest ? { oldestAt: oldest.savedAt } : {}) }
}

export const identityOf = ({ receipt: given, keys }: Former): Identity => ({ receipt: given, keys, signer: webSigner(keys.privateKey) })

const most = 1_000_000

/** Its chain from a number on. */
export const chainOf = async (store: Store, { head }: Former, from: number): Promise<Kept[]> => {
  if (from > head.seq) return []
  const rows = ownChain(await store.chain(head.dev, from, most), head.h)
  if (rows[0]?.entry.seq !== from) throw new StoreFault('corrupt', `entries/${head.dev}`)
  return rows
}
