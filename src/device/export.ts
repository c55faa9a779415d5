import type { Sealed } from '../record/entry.ts'
import { sealProblem, type PublicKey, type Verifier } from '../record/seal.ts'
import { unsentFile, unsentHashed, unsentText, type UnsentFile } from '../wire/unsent-file.ts'
import { clockText, type Clock } from './clock.ts'
import { readDeviceName } from './device-name.ts'
import type { Identity } from './identity.ts'
import type { Kept } from './kept.ts'
import { nextBatch } from './outbox.ts'
import type { Store } from './store.ts'

/** The most that one file may carry. */
const mostEntries = 20_000

/** What waits on this phone, as a file signed by it that any other phone of the laboratory may hand in. Undefined when nothing waits. */
export const makeUnsentFile = async (store: Store, identity: Identity, clock: Clock): Promise<UnsentFile | undefined> => {
  const { oldest } = await store.waiting()
  if (!oldest) return undefined
  const { dev, epoch } = identity.receipt
  const entries: Sealed[] = []
  let from: typeof oldest | undefined = oldest
  while (from && entries.length < mostEntries) {
    const batch: Sealed[] = await nextBatch(store, dev, from)
    entries.push(...batch)
    const last: Sealed = batch.at(-1)!
    const [following] = (await store.chain(dev, last.entry.seq + 1, 16)).filter(({ entry }) => entry.prev === last.h)
    from = following && { seq: following.entry.seq, id: following.entry.id, savedAt: following.time }
  }
  const file = {
    format: 'bathkeeper-unsent' as const, v: 1 as const, dev, epoch, name: await readDeviceName(store), made: clockText(clock), entries: entries.slice(0, mostEntries),
  }
  const hashed = await identity.signer.sha256(unsentHashed(file))
  return { ...file, sig: await identity.signer.sign(unsentText(hashed)) }
}

/** Text of the file, one entry a line so that even an editor can show it. */
export const unsentFileText = (file: UnsentFile): string => {
  const { entries, ...rest } = file
  return `${JSON.stringify(rest).slice(0, -1)},"entries":[\n${entries.map((one) => JSON.stringify(one)).join(',\n')}\n]}\n`
}

export type FileProblem =
  | { code: 'notAFile'; detail: string }
  | { code: 'signature' }
  /** This entry is not what its device signed, or does not follow the one before it. */
  | { code: 'entry'; seq: number; why: 'hash' | 'signature' | 'chain' }

/** Looks through a file before it is handed in. Without the device's key only its chain and hashes can be checked; the server has every key. */
export const checkUnsentFile = async (
  text: string,
  verifier: Verifier,
  keyOf: (dev: string) => Promise<PublicKey | undefined>,
): Promise<{ ok: true; file: UnsentFile } | { ok: false; problem: FileProblem }> => {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch {
    return { ok: false, problem: { code: 'notAFile', detail: 'not JSON' } }
  }
  const parsed = unsentFile.safeParse(raw)
  if (!parsed.success) return { ok: false, problem: { code: 'notAFile', detail: parsed.error.issues[0]?.path.join('.') ?? '' } }
  const file = parsed.data
  const key = await keyOf(file.dev)
  const { sig, ...signed } = file
  if (key && !(await verifier.verify(key, unsentText(await verifier.sha256(unsentHashed(signed))), sig))) return { ok: false, problem: { code: 'signature' } }
  let before: Sealed | undefined
  for (const one of file.entries) {
    const { seq, prev, dev } = one.entry
    if (dev !== file.dev || (before && (prev !== before.h || seq !== before.entry.seq + 1))) return { ok: false, problem: { code: 'entry', seq, why: 'chain' } }
    const why = key ? await sealProblem(one, key, verifier) : undefined
    if (why) return { ok: false, problem: { code: 'entry', seq, why } }
    before = one
  }
  return { ok: true, file }
}

/** Everything that can still be read, for a phone whose database is damaged. No server takes it in; a person can, and each entry proves itself. */
export const readableRecord = async (store: Store): Promise<string> => {
  const rows: Kept[] = await store.inTime({})
  return rows.map(({ entry, h, sig, gseq, status }) => JSON.stringify({ entry, h, sig, gseq, status })).join('\n') + '\n'
}
