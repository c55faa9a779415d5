import { generateKeyPairSync, sign } from 'node:crypto'
import { demoLab } from '../../src/demo/lab.ts'
import { shiftAt } from '../../src/plan/shift-time.ts'
import { shiftPage } from '../../src/projections/shift-page.ts'
import { canonical } from '../../src/record/canonical.ts'
import type { Envelope, Sealed } from '../../src/record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../../src/record/ids.ts'
import type { DataOf } from '../../src/record/kinds.ts'
import { signedText, type PublicKey } from '../../src/record/seal.ts'
import { newPrivateKey, serverKey, sha256 } from '../../src/server/keys.ts'
import { makeProof } from '../../src/server/people/proof.ts'
import { signedHead } from '../../src/server/signed-head.ts'
import { countersignAbout } from '../../src/wire/presence.ts'
import type { ShiftFile } from '../../src/wire/shift-file.ts'
import { hour, LabLog, minute, phone, smallPlan } from '../projections/log.ts'

/** A key of a device, and its chain sealed anew: what the log of a test says, as phones would have signed it. */
class Sealer {
  readonly #privateKey
  readonly key: PublicKey
  readonly seed: Hash
  #h: Hash

  constructor(readonly dev: DeviceId) {
    const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
    const { x, y } = publicKey.export({ format: 'jwk' })
    this.#privateKey = privateKey
    this.key = { kty: 'EC', crv: 'P-256', x: x!, y: y! }
    this.seed = sha256(`seed of ${dev}`)
    this.#h = this.seed
  }

  seal(given: Envelope): Sealed {
    const entry = { ...given, prev: this.#h }
    const h = sha256(canonical(entry))
    this.#h = h
    return { entry, h, sig: sign('sha256', Buffer.from(signedText(h)), { key: this.#privateKey, dsaEncoding: 'ieee-p1363' }).toString('base64url') }
  }
}

const epoch = 'epoch-of-a-test'

/** A morning shift of two phones, signed by the supervisor on a third, with a late arrival that is countersigned where asked. */
export const signedShift = (asked: { late?: boolean; countersigned?: boolean; provisional?: boolean; own?: boolean } = {}): ShiftFile => {
  const plan = smallPlan(demoLab(), 'neg-1-fix-ph', 'neg-1-scratches')
  const start = Date.parse('2026-01-12T06:00:00Z')
  const at = (minutes: number): number => start + minutes * minute
  const span = shiftAt(plan, start)
  const log = new LabLog(plan, start - hour)
  log.run('neg-1', 'running', at(0), 30.48)
  const [a, b, s] = [phone('a'), phone('b'), phone('c')]
  const first = log.reading('neg-1-fix-ph', 4.92, at(2))
  log.reading('neg-1-fix-ph', 4.91, at(4), { repeatOf: first }, { dev: b })
  log.acid(first, at(10), { lot: 'A 17' })
  log.reading('neg-1-fix-ph', 4.5, at(40), {}, { dev: b })
  log.say({ kind: 'note', data: { text: 'Rolle 14 läuft wieder. “±” €', about: 'maintenance' }, at: at(50), dev: b })
  log.say({ kind: 'handover', data: { shift: span.shift.id, date: span.date, notes: 'all well', open: [], side: 'given' }, at: at(470) })
  log.say({ kind: 'handover', data: { shift: span.shift.id, date: span.date, notes: '', open: [], side: 'accepted' }, at: at(482), person: 'tomas' })
  // Of the next shift, between two of this one.
  log.reading('neg-1-fix-ph', 4.5, at(490))
  log.say({ kind: 'skip', data: { check: 'neg-1-fix-ph' as never, due: at(300), reason: 'otherWork' }, at: at(495) })

  const server = serverKey(newPrivateKey())
  const sealers = new Map([a, b, s].map((dev) => [dev, new Sealer(dev)]))
  const sealed: Sealed[] = []
  const sealAll = (): void => {
    for (const arrived of log.arrived.slice(sealed.length)) {
      const one = sealers.get(arrived.entry.dev)!.seal(arrived.entry)
      sealed.push(one)
      arrived.h = one.h
    }
  }
  sealAll()
  const page = shiftPage({ lab: log.lab(), plan, span, now: at(500) })
  const digest = sha256(page.digestText)
  const proofOf = (about: Hash, minutes: number): string => makeProof(server, { person: 'helena', dev: s, epoch, from: at(minutes), until: at(minutes + 10), about })
  const data: DataOf<'signOff'> = {
    shift: span.shift.id, date: span.date, from: span.from, to: span.to, covers: page.covers, digest, openItems: asked.own ? [{ code: 'ownException', ref: first }] : [], meaning: 'reviewedAndReleased',
    head: signedHead(server, { epoch, reach: { gseq: sealed.length, sh: sha256('so far') }, now: at(499) }),
    ...(asked.provisional ? { provisional: true } : { provisional: false, proof: proofOf(digest, 499) }),
  }
  const ref = log.say({ kind: 'signOff', data, at: at(500), person: 'helena', dev: s })
  if (asked.late) {
    const late: EntryId[] = [log.reading('neg-1-fix-ph', 4.6, at(300), {}, { dev: b })]
    if (asked.countersigned) log.say({ kind: 'countersign', data: { ref, late, provisional: false, proof: proofOf(sha256(countersignAbout({ ref, late })), 599) }, at: at(600), person: 'helena', dev: s })
  }
  sealAll()
  return {
    format: 'bathkeeper-shift', v: 1, laboratory: plan.name, made: '2026-01-12T16:00:00+00:00', timeZone: plan.timeZone,
    shift: { id: span.shift.id, name: span.shift.name, date: span.date, from: span.from, to: span.to },
    server: { epoch, key: server.publicKey },
    devices: [...sealers.values()].map(({ dev, key, seed }) => ({ dev, name: `Machine room ${dev.at(-1)}`, key, seed })),
    // The plan is of another day: it stands outside the run.
    entries: sealed.slice(1).sort((one, other) => (one.entry.dev < other.entry.dev ? -1 : one.entry.dev > other.entry.dev ? 1 : one.entry.seq - other.entry.seq)),
  }
}
