import { readEnvelope, type Envelope } from '../../record/entry.ts'
import type { Hash } from '../../record/ids.ts'
import { wireVersion, type PushAnswer, type Status } from '../../wire/messages.ts'
import { linkText } from '../../wire/signed-texts.ts'
import { asidesAmong, isOfOtherHistory, keepAside } from '../database/asides.ts'
import { nameBlobs } from '../database/blobs.ts'
import type { Tx } from '../database/database.ts'
import { readDevice, setDeviceReach, setDeviceState } from '../database/devices.ts'
import { entriesOfDevice, entryOfDevice, insertEntries, knownIdsAmong } from '../database/entries.ts'
import { readEpoch } from '../database/facts.ts'
import { lockReach, readReach, writeReach, type Reach } from '../database/head.ts'
import { note } from '../database/log.ts'
import { insertPlan, planInForce, type PlanInForce } from '../database/plans.ts'
import type { DeviceRow, NewEntryRow } from '../database/tables.ts'
import { sha256 } from '../keys.ts'
import type { Parts } from '../parts.ts'
import { signedHead } from '../signed-head.ts'
import { checkSeals, type Checked } from './check-seals.ts'
import { momentOf, timeFlags, type Moment } from './flags.ts'
import { judge, type Judged } from './judge.ts'

type PushError = NonNullable<PushAnswer['error']>
const dayMs = 86_400_000

/** What a push did, besides its answer: for the metrics. */
export interface Pushed {
  answer: PushAnswer
  stored: Status[]
  repeated: number
}

/**
 * Takes consecutive entries of one device. Hash and signature are checked before the transaction; in it, each entry in order is either
 * known already, or the next one of its chain and stored whatever it says, or the reason to stop. What was good up to there is committed.
 */
export const push = async (parts: Parts, dev: string, given: { epoch: string | undefined; entries: readonly unknown[] }): Promise<Pushed> => {
  const { database } = parts
  const known = await readDevice(database.sql, dev)
  if (!known) throw new Error(`push of an unknown device ${dev}`)
  const { checked, error: sealError } = await checkSeals(given.entries, known)
  return database.transactInTurn(async (tx) => {
    const reach = await lockReach(tx)
    const [epoch, device] = [await readEpoch(tx), await readDevice(tx, dev)]
    if (!device) throw new Error(`push of an unknown device ${dev}`)
    if (given.epoch !== undefined && given.epoch !== epoch) {
      return { answer: answerOf(parts, { epoch, reach, device, acks: [], error: { code: 'epoch', want: device.last_seq + 1 } }), stored: [], repeated: 0 }
    }
    return new Intake(parts, tx, epoch, reach, device).take(checked, sealError)
  })
}

const answerOf = (
  parts: Parts,
  given: { epoch: string; reach: Reach; device: Pick<DeviceRow, 'last_seq' | 'last_hash'>; acks: PushAnswer['acks']; error: PushError | undefined },
): PushAnswer => {
  const now = parts.clock()
  return {
    v: wireVersion,
    lastSeq: given.device.last_seq,
    lastHash: given.device.last_hash as Hash,
    acks: given.acks,
    ...(given.error ? { error: given.error } : {}),
    serverTime: now,
    head: signedHead(parts.key, { epoch: given.epoch, reach: given.reach, now }),
  }
}

/** One push on its way in: the chain of the device and of the server as they grow. */
class Intake {
  readonly #acks: PushAnswer['acks'] = []
  readonly #rows: NewEntryRow[] = []
  readonly #stored: Status[] = []
  readonly #pending = new Map<string, Envelope>()
  readonly #now: number
  #repeated = 0
  /** Read once a push; a plan that comes in with it is read anew. */
  #plan: { inForce: PlanInForce | undefined } | undefined
  #moment: Moment | undefined

  constructor(
    private readonly parts: Parts,
    private readonly tx: Tx,
    private readonly epoch: string,
    private reach: Reach,
    private readonly device: DeviceRow,
  ) {
    this.#now = parts.clock()
  }

  async take(checked: readonly Checked[], sealError: PushError | undefined): Promise<Pushed> {
    const error = (await this.#takeAll(checked)) ?? sealError ?? this.#standing()
    await this.#write()
    const { reach, device, epoch } = this
    return { answer: answerOf(this.parts, { epoch, reach, device, acks: this.#acks, error }), stored: this.#stored, repeated: this.#repeated }
  }

  async #takeAll(checked: readonly Checked[]): Promise<PushError | undefined> {
    if (!checked.length) return undefined
    const before = await entriesOfDevice(this.tx, this.device.dev, checked.map(({ entry }) => entry.seq))
    const stored = new Map<number, { h: string; gseq: number }>(before.map((row) => [row.seq, row]))
    const knownIds = await knownIdsAmong(this.tx, checked.map(({ entry }) => entry.id))
    const previous = await entryOfDevice(this.tx, this.device.dev, this.device.last_seq)
    const shaped = previous && readEnvelope(JSON.parse(previous.body))
    this.#moment = shaped?.success ? momentOf(shaped.data) : undefined

    for (const [place, one] of checked.entries()) {
      const { seq, prev } = one.entry
      if (seq <= this.device.last_seq) {
        const row = stored.get(seq)
        if (!row) throw new Error(`entry ${seq} of device ${this.device.dev} is missing`)
        if (row.h !== one.h) return this.#fork(checked.slice(place))
        this.#acks.push({ id: one.entry.id, seq, gseq: row.gseq })
        this.#repeated += 1
      } else if ((seq !== this.device.last_seq + 1 || prev !== this.device.last_hash) && (await isOfOtherHistory(this.tx, this.device.dev, prev))) {
        return this.#fork(checked.slice(place))
      } else if (seq !== this.device.last_seq + 1) {
        return { code: 'gap', seq, want: this.device.last_seq + 1 }
      } else if (prev !== this.device.last_hash) {
        await this.#aside(one, 'chain')
        await note(this.tx, this.#now, 'chain', { dev: this.device.dev, detail: `seq ${seq}` })
        return { code: 'chain', seq, want: Math.max(1, this.device.last_seq) }
      } else {
        if (!this.#spend(Buffer.byteLength(one.body))) return { code: 'quota', seq, want: seq }
        await this.#store(one, knownIds)
        stored.set(seq, { h: one.h, gseq: this.reach.gseq })
      }
    }
    return undefined
  }

  /** Two histories of one device: a copied profile, or one brought back from a backup. Whatever of them does not fit is kept aside. */
  async #fork(rest: readonly Checked[]): Promise<PushError> {
    if (this.device.state === 'enrolled') {
      await setDeviceState(this.tx, this.device.dev, 'quarantined')
      await this.parts.database.announce(this.tx, { event: 'devices', data: {} })
    }
    const kept = await asidesAmong(this.tx, this.device.dev, rest.map(({ h }) => h))
    const { seq } = rest[0]!.entry
    for (const one of rest) {
      if (kept.has(one.h)) continue
      // `fork` says that all of them are safe here; where they are not, they stay where they are.
      if (!this.#spend(Buffer.byteLength(one.body))) return { code: 'quota', seq: one.entry.seq, want: one.entry.seq }
      await this.#aside(one, 'fork')
    }
    if (kept.size < rest.length) await note(this.tx, this.#now, 'fork', { dev: this.device.dev, detail: `seq ${seq}` })
    return { code: 'fork', seq }
  }

  async #aside(one: Checked, why: 'fork' | 'chain'): Promise<void> {
    const { seq, id } = one.entry
    await keepAside(this.tx, { dev: this.device.dev, seq, id, h: one.h, sig: one.sig, body: one.body, recv_at: this.#now, why })
  }

  async #store(one: Checked, knownIds: Set<string>): Promise<void> {
    const { entry, body, h, sig } = one
    this.#plan ??= { inForce: await planInForce(this.tx, this.#now) }
    const plan = this.#plan.inForce
    const judged = await judge(entry, {
      tx: this.tx, key: this.parts.key, recvAt: this.#now, deviceState: this.device.state, plan, knownIds, pending: this.#pending,
    })
    const gseq = this.reach.gseq + 1
    const sh = sha256(linkText({ before: this.reach.sh, gseq, h, recvAt: this.#now }))
    const flags = judged.envelope ? timeFlags(judged.envelope, this.#moment) : []
    this.#rows.push({
      gseq, dev: this.device.dev, seq: entry.seq, id: entry.id, kind: judged.envelope?.kind ?? null, op: judged.envelope?.op ?? null, h, sig, body,
      recv_at: this.#now, status: judged.status, why: judged.why ?? null, flags: flags.length ? flags.join(' ') : null, sh,
    })
    this.#acks.push({ id: entry.id, seq: entry.seq, gseq })
    this.#stored.push(judged.status)
    this.reach = { gseq, sh }
    this.device.last_seq = entry.seq
    this.device.last_hash = h
    knownIds.add(entry.id)
    await this.#remember(judged, gseq)
  }

  /** What the server itself goes by later: a plan, names of photos, the entry as the next one's reference. */
  async #remember(judged: Judged, gseq: number): Promise<void> {
    if (!judged.envelope) return
    this.#moment = momentOf(judged.envelope)
    this.#pending.set(judged.envelope.id, judged.envelope)
    const blobs = new Set<string>(judged.envelope.blobs)
    if (judged.entry?.kind === 'photo') blobs.add(judged.entry.data.sha256)
    if (blobs.size === 0 && judged.entry?.kind !== 'plan') return
    await this.#write()
    await nameBlobs(this.tx, [...blobs].map((sha256Named) => ({ sha256: sha256Named, gseq })))
    if (judged.entry?.kind === 'plan') {
      await insertPlan(this.tx, gseq, judged.entry.data.plan, judged.entry.data.effectiveFrom)
      this.#plan = undefined
    }
  }

  /** False where this would be more than the device may bring in a day. */
  #spend(bytes: number): boolean {
    const day = Math.floor(this.#now / dayMs)
    const before = this.device.quota_day === day ? this.device.quota_bytes : 0
    if (before + bytes > this.parts.limits.dailyBytes) return false
    this.device.quota_day = day
    this.device.quota_bytes = before + bytes
    return true
  }

  /** Entries of a device that is not in good standing are safe, but it is told that they count for nothing. */
  #standing(): PushError | undefined {
    const { state } = this.device
    return state === 'enrolled' || state === 'waiting' ? undefined : { code: state }
  }

  async #write(): Promise<void> {
    const rows = this.#rows.splice(0)
    await insertEntries(this.tx, rows)
    if (rows.length) {
      await writeReach(this.tx, this.reach)
      await this.parts.database.announce(this.tx, { event: 'head', data: { gseq: this.reach.gseq, epoch: this.epoch } })
    }
    const { last_seq, last_hash, quota_day, quota_bytes } = this.device
    await setDeviceReach(this.tx, this.device.dev, { last_seq, last_hash, quota_day, quota_bytes })
  }
}

export const currentHead = async (parts: Parts, tx = parts.database.sql) =>
  signedHead(parts.key, { epoch: await readEpoch(tx), reach: await readReach(tx), now: parts.clock() })
