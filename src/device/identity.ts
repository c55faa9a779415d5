import * as z from 'zod/mini'
import type { Signer } from '../record/seal.ts'
import { receipt, type Receipt } from '../wire/receipt.ts'
import { StoreFault } from './faults.ts'
import type { ShelfStore } from './store.ts'
import { webSigner } from './web-seal.ts'

/** Who this phone is to the laboratory: the server's receipt and the key it was given for. */
export interface Identity {
  receipt: Receipt
  keys: CryptoKeyPair
  signer: Signer
}

/** Made when needed: a page that came over plain http has no keys at all, and must still be able to say so. */
const keyPair = () => z.strictObject({ publicKey: z.instanceof(CryptoKey), privateKey: z.instanceof(CryptoKey) })

/** Undefined until enrolled. Read anew each time, as another tab may just have enrolled. */
export const readIdentity = async (store: ShelfStore): Promise<Identity | undefined> => {
  const [rawReceipt, rawKeys] = await Promise.all([store.take('singles', 'receipt'), store.take('singles', 'keys')])
  if (rawReceipt === undefined) return undefined
  const parsed = receipt.safeParse(rawReceipt)
  const keys = keyPair().safeParse(rawKeys)
  if (!parsed.success || !keys.success) throw new StoreFault('corrupt', 'receipt', parsed.error ?? keys.error)
  return { receipt: parsed.data, keys: keys.data, signer: webSigner(keys.data.privateKey) }
}
