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

/** Entries of one device, in their order, as files signed by it; most often one. */
export const unsentFilesOf = async (
  { receipt, signer }: Identity,
  name: string,
  clock: Clock,
  given: readonly Sealed[],
  limits: FileLimits = usualLimits,
): Promise<UnsentFile[]> => {
  const signed = async (entries: Sealed[]): Promise<UnsentFile> => {
    const { dev, epoch } = receipt
    const file = { format: 'bathkeeper-unsent' as const, v: 1 as const, dev, epoch, name, made: clockText(clock), entries }
    return { ...file, sig: await signer.sign(unsentText(await signer.sha256(unsentHashed(file)))) }
  }
  const files: UnsentFile[] = []
  let entries: Sealed[] = []
  let bytes = 0
  for (const { entry, h, sig } of given) {
    const one: Sealed = { entry, h, sig }
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

/** What waits on this phone, oldest first, for any other phone of the laboratory to hand in. None when nothing waits. */
export const makeUnsentFiles = async (store: Store, identity: Identity, clock: Clock, limits?: FileLimits): Promise<UnsentFile[]> =>
  unsentFilesOf(identity, await readDeviceName(store), clock, await unsent(store, identity.receipt.dev), limits)

/** From the oldest that waits to the head. */
const unsent = async (store: Store, dev: DeviceId): Promise<Sealed[]> => {
  const entries: Sealed[] = []
  let from = (await store.waiting()).oldest
  while (from) {
    entries.push(...(await nextBatch(store, dev, from)))
    const last = entries.at(-1)!
    const [following] = (await store.chain(dev, last.entry.seq + 1, 16)).filter(({ entry }) => entry.prev === last.h)
    from = following && { seq: following.entry.seq, id: following.entry.id, savedAt: following.time }
  }
  return entries
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
