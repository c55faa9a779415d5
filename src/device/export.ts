import type { Sealed } from '../record/entry.ts'
import type { DeviceId } from '../record/ids.ts'
import { sealProblem, type PublicKey, type Verifier } from '../record/seal.ts'
import { largestImportBytes, unsentFile, unsentHashed, unsentText, type UnsentFile } from '../wire/unsent-file.ts'
import { clockText, type Clock } from './clock.ts'
import { readDeviceName } from './device-name.ts'
import type { Identity } from './identity.ts'
import type { Kept } from './kept.ts'
import { nextBatch } from './outbox.ts'
import type { Store } from './store.ts'

/** The most that one file may carry: well within what the server reads at once. */
export interface FileLimits {
  entries: number
  bytes: number
}
const usualLimits: FileLimits = { entries: 5_000, bytes: largestImportBytes / 4 }

/**
 * What waits on this phone, oldest first, as files signed by it that any other phone of the laboratory may hand in; most often one. None
 * when nothing waits.
 */
export const makeUnsentFiles = async (store: Store, identity: Identity, clock: Clock, limits: FileLimits = usualLimits): Promise<UnsentFile[]> => {
  const { dev, epoch } = identity.receipt
  const name = await readDeviceName(store)
  const signed = async (entries: Sealed[]): Promise<UnsentFile> => {
    const file = { format: 'bathkeeper-unsent' as const, v: 1 as const, dev, epoch, name, made: clockText(clock), entries }
    return { ...file, sig: await identity.signer.sign(unsentText(await identity.signer.sha256(unsentHashed(file)))) }
  }
  const files: UnsentFile[] = []
  let entries: Sealed[] = []
  let bytes = 0
  for await (const one of unsent(store, dev)) {
    const size = new TextEncoder().encode(JSON.stringify(one)).length
    if (entries.length && (entries.length >= limits.entries || bytes + size > limits.bytes)) {
      files.push(await signed(entries))
      entries = []
      bytes = 0
    }
    entries.push(one)
    bytes += size
  }
  if (entries.length) files.push(await signed(entries))
  return files
}

/** From the oldest that waits to the head. */
async function* unsent(store: Store, dev: DeviceId): AsyncGenerator<Sealed> {
  let from = (await store.waiting()).oldest
  while (from) {
    const batch = await nextBatch(store, dev, from)
    yield* batch
    const last = batch.at(-1)!
    const [following] = (await store.chain(dev, last.entry.seq + 1, 16)).filter(({ entry }) => entry.prev === last.h)
    from = following && { seq: following.entry.seq, id: following.entry.id, savedAt: following.time }
  }
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
