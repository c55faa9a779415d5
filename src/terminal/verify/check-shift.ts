import { countersign, signOff, type Countersign, type SignOff } from '../../record/kinds/sign-off.ts'
import type { ShiftFile } from '../../wire/shift-file.ts'
import { canonicalText } from './canonical.ts'
import { entriesOfShift } from './of-shift.ts'
import { isSignedBy, sha256, thumbprint, type Key } from './seals.ts'

type Sealed = ShiftFile['entries'][number]

export interface Bad {
  /** Id of the entry; undefined where the file as a whole is meant. */
  id?: string
  why: string
}

export interface CheckedSignature {
  id: string
  person: string
  at: string
  /** Entries under it, and entries of the shift that came after it. */
  covered: number
  late: number
  lateNotCountersigned: number
  /** The signer's own exceptions that it released, and of them those that nobody else has countersigned. */
  own: number
  ownNotCountersigned: number
  digest: string
  isProvisional: boolean
  isConfirmed: boolean
}

export interface CheckedShift {
  bad: Bad[]
  signatures: CheckedSignature[]
  countersigns: number
}

/**
 * Everything that can be known from the file alone, by code of its own: each entry is what its device signed, each device's entries follow one
 * another without a gap, each signature's digest is that of the entries it covers, and the server's word behind it was given for just that.
 * What it cannot know is whether the keys in the file are those of the laboratory: their thumbprints are for a person to compare.
 */
export const checkShift = (file: ShiftFile): CheckedShift => {
  const { bad, ...signed } = checkSignatures(file)
  return { bad: [...entryFaults(file), ...chainFaults(file), ...bad], ...signed }
}

/** The signatures under one shift, over entries whose own seals are looked at elsewhere. */
export const checkSignatures = (file: ShiftFile): CheckedShift => {
  const bad: Bad[] = []
  const ofShift = entriesOfShift(file)
  const covered = file.entries.filter(({ entry }) => ofShift.has(entry.id))
  const given = file.entries.filter(({ entry, uncounted }) => !uncounted && entry['kind'] === 'countersign').map((one) => ({ one, data: countersign.safeParse(one.entry['data']).data }))
  const signatures: CheckedSignature[] = []
  const digestOf = new Map<string, string>()
  const signOffs = file.entries.flatMap((one) => {
    const data = one.uncounted || one.entry['kind'] !== 'signOff' ? undefined : signOff.safeParse(one.entry['data']).data
    if (!data || data.shift !== file.shift.id || data.date !== file.shift.date) return []
    digestOf.set(one.entry.id, data.digest)
    return [{ one, data }]
  })
  for (const { one, data } of signOffs) {
    bad.push(...signOffFaults(file, one, data, covered))
    const isUnder = ({ entry }: Sealed): boolean => entry.seq <= (data.covers[entry.dev] ?? 0)
    const seen = new Set<string>(given.flatMap((it) => (it.data && digestOf.get(it.data.ref) === data.digest ? it.data.late : [])))
    const late = covered.filter((it) => !isUnder(it))
    const own = data.openItems.flatMap(({ code, ref }) => (code === 'ownException' && ref ? [ref] : []))
    const seenByAnother = new Set<string>(given.flatMap((it) => (it.data && digestOf.get(it.data.ref) === data.digest && it.one.entry['op'] !== one.entry['op'] ? it.data.late : [])))
    signatures.push({
      id: one.entry.id, person: String(one.entry['op']), at: String(one.entry['at']), covered: covered.length - late.length, late: late.length,
      lateNotCountersigned: late.filter(({ entry }) => !seen.has(entry.id)).length, own: own.length, ownNotCountersigned: own.filter((id) => !seenByAnother.has(id)).length, digest: data.digest, isProvisional: data.provisional,
      isConfirmed: signOffs.some((it) => it.data.digest === data.digest && !it.data.provisional),
    })
  }
  for (const { one, data } of given) bad.push(...(data ? countersignFaults(file, one, data, digestOf) : [{ id: one.entry.id, why: 'is no countersign' }]))
  return { bad, signatures, countersigns: given.length }
}

/** What seals and chains are about: a shift's file and a record's have it alike. */
type Chains = Pick<ShiftFile, 'entries' | 'devices'>

const keyOf = (file: Chains, dev: string): Key | undefined => file.devices.find((it) => it.dev === dev)?.key

export const entryFaults = (file: Chains): Bad[] => {
  const ids = new Set<string>()
  return file.entries.flatMap(({ entry, h, sig }): Bad[] => {
    const { id } = entry
    if (ids.has(id)) return [{ id, why: 'stands in the file twice' }]
    ids.add(id)
    if (sha256(canonicalText(entry)) !== h) return [{ id, why: 'is not what was hashed: its content was changed' }]
    const key = keyOf(file, entry.dev)
    if (!key) return [{ id, why: `is of device ${entry.dev}, of which the file has no key` }]
    return isSignedBy(key, `e1|${h}`, sig) ? [] : [{ id, why: 'was not signed by its device' }]
  })
}

/** From each entry to the next of its device where the numbers follow; whether none is missing is asked of each signature. */
export const chainFaults = ({ entries, devices }: Chains): Bad[] => {
  const at = new Map(entries.map((one) => [`${one.entry.dev} ${one.entry.seq}`, one]))
  return entries.flatMap(({ entry }): Bad[] => {
    if (at.get(`${entry.dev} ${entry.seq}`)!.entry.id !== entry.id) return [{ id: entry.id, why: `bears number ${entry.seq} of its device, as another does` }]
    const before = entry.seq === 1 ? devices.find(({ dev }) => dev === entry.dev)?.seed : at.get(`${entry.dev} ${entry.seq - 1}`)?.h
    return before && before !== entry.prev ? [{ id: entry.id, why: 'does not follow the entry before it' }] : []
  })
}

const signOffFaults = (file: ShiftFile, { entry }: Sealed, data: SignOff, covered: readonly Sealed[]): Bad[] => {
  const { id } = entry
  const bad: Bad[] = []
  if (data.from !== file.shift.from || data.to !== file.shift.to) bad.push({ id, why: 'signs another span than the file names' })
  const under = covered.filter((it) => it.entry.seq <= (data.covers[it.entry.dev] ?? 0))
  const ordered = [...under].sort((a, b) => (a.entry.dev < b.entry.dev ? -1 : a.entry.dev > b.entry.dev ? 1 : a.entry.seq - b.entry.seq))
  const text = ['bathkeeper-digest-1', ...ordered.map((it) => `${it.entry.id} ${it.h}`)].join('\n') + '\n'
  if (sha256(text) !== data.digest) bad.push({ id, why: 'has a digest that is not that of the entries it covers' })
  const here = new Set(file.entries.map((it) => `${it.entry.dev} ${it.entry.seq}`))
  for (const dev of Object.keys(data.covers)) {
    const seqs = ordered.filter((it) => it.entry.dev === dev).map((it) => it.entry.seq)
    for (let seq = seqs[0] ?? 0; seq < (seqs.at(-1) ?? 0); seq++) if (!here.has(`${dev} ${seq}`)) bad.push({ id, why: `covers number ${seq} of device ${dev}, which is not in the file` })
  }
  const { head } = data
  if (head && !isSignedBy(file.server.key, `h1|${head.epoch}|${head.gseq}|${head.sh}|${head.time}`, head.sig)) bad.push({ id, why: 'names a state of the server’s record that the server did not sign' })
  if (!data.provisional) bad.push(...proofFaults(file, entry, data.proof, data.digest))
  return bad
}

const countersignFaults = (file: ShiftFile, { entry }: Sealed, data: Countersign, signOffs: ReadonlyMap<string, string>): Bad[] => {
  const bad: Bad[] = signOffs.has(data.ref) ? [] : [{ id: entry.id, why: 'countersigns a signature that is not in the file' }]
  if (!data.provisional) bad.push(...proofFaults(file, entry, data.proof, sha256(canonicalText({ late: data.late, ref: data.ref }))))
  return bad
}

const slackMs = 120_000

/** The server's word that this person keyed their passphrase anew, on this device, for just this. */
const proofFaults = ({ server }: ShiftFile, entry: Sealed['entry'], proof: string | undefined, about: string): Bad[] => {
  const { id } = entry
  const [mark, person, dev, epoch, from, until, what, sig, ...more] = (proof ?? '').split('.')
  if (mark !== 'p1' || !sig || more.length) return [{ id, why: 'has no word of the server behind it' }]
  if (!isSignedBy(server.key, [mark, person, dev, epoch, from, until, what].join('.'), sig)) return [{ id, why: 'has a word behind it that the server did not give' }]
  if (person !== entry['op'] || dev !== entry.dev || what !== about) return [{ id, why: 'has the server’s word for something else behind it' }]
  const skew = (entry['skew'] as { ms?: number } | null | undefined)?.ms ?? 0
  const at = Date.parse(String(entry['at'])) + skew
  return at >= Number(from) - slackMs && at <= Number(until) + slackMs ? [] : [{ id, why: 'was signed outside the minutes for which the server gave its word' }]
}

export const thumbprints = (file: Chains & { server: { key: Key } }): { server: string; devices: { name: string; dev: string; thumbprint: string }[] } => ({
  server: thumbprint(file.server.key),
  devices: file.devices.map(({ dev, name, key }) => ({ dev, name, thumbprint: thumbprint(key) })),
})
