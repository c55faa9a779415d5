import * as z from 'zod'
import { canonical, NotCanonical } from '../../record/canonical.ts'
import { quickParse } from '../../record/fits.ts'
import type { Hash } from '../../record/ids.ts'
import { signedText } from '../../record/seal.ts'
import { largestPush } from '../../wire/largest.ts'
import type { PushAnswer } from '../../wire/messages.ts'
import { chained, type Chained } from '../../wire/chained.ts'
import { readPublicKey, sha256, verifyTextAside } from '../keys.ts'

type PushError = NonNullable<PushAnswer['error']>

/** An entry whose hash and signature are right; what it says has not been looked at yet. */
export interface Checked {
  /** As it came, not as a schema has read it: the hash is over this. */
  entry: Chained
  body: string
  h: Hash
  sig: string
}

const loosely = z.strictObject({
  entry: chained,
  h: z.string().regex(/^[0-9a-f]{64}$/),
  sig: z.string().regex(/^[A-Za-z0-9_-]{86}$/),
})

const read = quickParse(loosely)
/** Looked at as it came, not as a copy: the hash is over this. */
const isSealed = (raw: unknown): raw is z.infer<typeof loosely> => read(raw).success

const seqOf = (raw: unknown): number | undefined => {
  const seq = z.looseObject({ entry: z.looseObject({ seq: z.number() }) }).safeParse(raw)
  return seq.success ? seq.data.entry.seq : undefined
}

const stopped = (code: PushError['code'], raw: unknown): { error: PushError } => {
  const seq = seqOf(raw)
  return { error: { code, ...(seq === undefined ? {} : { seq }) } }
}

const checkOne = async (raw: unknown, dev: string, key: NonNullable<ReturnType<typeof readPublicKey>>): Promise<Checked | { error: PushError }> => {
  if (!isSealed(raw) || raw.entry.dev !== dev) return stopped('envelope', raw)
  const { entry, sig } = raw
  let body: string
  try {
    body = canonical(entry)
  } catch (error) {
    if (error instanceof NotCanonical) return stopped('envelope', raw)
    throw error
  }
  const most = entry['kind'] === 'plan' ? largestPush.bytesPerPlan : largestPush.bytesPerEntry
  if (Buffer.byteLength(body) > most) return stopped('tooLarge', raw)
  const h = sha256(body)
  if (h !== raw.h || !(await verifyTextAside(key, signedText(h), sig))) return stopped('signature', raw)
  return { entry, body, h, sig }
}

/** The good ones up to the first that is not, and what is wrong with that one. */
export const checkSeals = async (
  entries: readonly unknown[],
  device: { dev: string; key_x: string; key_y: string },
): Promise<{ checked: Checked[]; error?: PushError }> => {
  const key = readPublicKey({ x: device.key_x, y: device.key_y })
  if (!key) throw new Error(`the key of device ${device.dev} cannot be read`)
  const checked: Checked[] = []
  for (const one of await Promise.all(entries.map((raw) => checkOne(raw, device.dev, key)))) {
    if ('error' in one) return { checked, error: one.error }
    checked.push(one)
  }
  return { checked }
}
