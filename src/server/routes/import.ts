import type { Hash } from '../../record/ids.ts'
import { largestPush } from '../../wire/largest.ts'
import { unsentHashed, unsentText, type ImportAnswer, type UnsentFile } from '../../wire/unsent-file.ts'
import { readDevice } from '../database/devices.ts'
import { note } from '../database/log.ts'
import { Refused } from '../http/refused.ts'
import { readPublicKey, sha256, verifyText } from '../keys.ts'
import { push } from '../ingest/push.ts'
import { countPushed } from './push.ts'
import type { Handler } from './given.ts'

/** The file's own signature, over the hashes of its entries; what an entry lacks besides is found at the entry. */
const isWhole = (file: unknown, key: ReturnType<typeof readPublicKey>): boolean => {
  const { sig, ...rest } = file as UnsentFile
  let hashed: Hash
  try {
    hashed = sha256(unsentHashed(rest))
  } catch {
    return false
  }
  return key !== undefined && verifyText(key, unsentText(hashed), sig)
}

/** Whoever handed the file in lets go of it on `fork`, so what follows on the second history is kept aside to its end. */
const goesOn = (answer: ImportAnswer | undefined): boolean =>
  answer?.error === undefined || (['quarantined', 'revoked', 'retired', 'fork'] as const).some((code) => code === answer.error?.code)

/** What another phone could not send. Its entries prove themselves, so any enrolled device may hand them in, whatever epoch they are from. */
export const importUnsent: Handler<'import'> = async ({ parts, device, request }) => {
  const from = await readDevice(parts.database.sql, request.dev)
  if (!from) throw new Refused('notFound', { detail: 'dev' })
  if (from.state === 'waiting') throw new Refused('notConfirmed')
  if (!isWhole(request, readPublicKey({ x: from.key_x, y: from.key_y }))) throw new Refused('unauthorised', { detail: 'sig' })
  const { entries } = request
  const acks: ImportAnswer['acks'] = []
  let answer: ImportAnswer | undefined
  for (let at = 0; at < entries.length && goesOn(answer); at += largestPush.entries) {
    const pushed = await push(parts, from.dev, { epoch: undefined, entries: entries.slice(at, at + largestPush.entries) })
    countPushed(parts, pushed)
    answer = pushed.answer
    acks.push(...answer.acks)
  }
  await note(parts.database.sql, parts.clock(), 'imported', { dev: from.dev, detail: `${acks.length} of ${entries.length} by ${device.dev}` })
  return { ...answer!, acks }
}
