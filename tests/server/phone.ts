import { generateKeyPairSync, randomBytes, sign, type KeyObject } from 'node:crypto'
import { canonical } from '../../src/record/canonical.ts'
import type { Envelope, Sealed } from '../../src/record/entry.ts'
import type { DeviceId, EntryId, Hash } from '../../src/record/ids.ts'
import { signedText } from '../../src/record/seal.ts'
import { sha256 } from '../../src/server/keys.ts'
import { authorizationText, presenceHeader, requestText } from '../../src/wire/auth.ts'
import { plainCode } from '../../src/wire/code.ts'
import type { PullAnswer, PushAnswer } from '../../src/wire/messages.ts'
import type { Receipt } from '../../src/wire/receipt.ts'
import { enrolText } from '../../src/wire/signed-texts.ts'

export type Ask = (request: Request) => Response | Promise<Response>

/** A UUIDv7 (RFC 9562) of a test. */
export const newId = (at = Date.now()): EntryId => {
  const time = at.toString(16).padStart(12, '0')
  const random = randomBytes(10).toString('hex')
  return `${time.slice(0, 8)}-${time.slice(8)}-7${random.slice(0, 3)}-8${random.slice(3, 6)}-${random.slice(6, 18)}` as EntryId
}

/** A device as the protocol sees it, written apart from the phone's own code so that both are held to the same page. */
export class Phone {
  readonly #key: KeyObject
  readonly jwk: { kty: 'EC'; crv: 'P-256'; x: string; y: string }
  dev = '' as DeviceId
  epoch = ''
  seq = 0
  h = '' as Hash
  #nonce = ''
  readonly sess = randomBytes(4).toString('hex')

  constructor(readonly ask: Ask, readonly origin = 'http://localhost') {
    const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' })
    this.#key = privateKey
    const { x, y } = publicKey.export({ format: 'jwk' })
    this.jwk = { kty: 'EC', crv: 'P-256', x: x!, y: y! }
  }

  sign(text: string): string {
    return sign('sha256', Buffer.from(text), { key: this.#key, dsaEncoding: 'ieee-p1363' }).toString('base64url')
  }

  async enrol(code: string, firstSupervisor?: { name: string; passphrase: string }): Promise<Receipt> {
    const plain = plainCode(code)
    const body = JSON.stringify({ code: plain, key: this.jwk, name: 'A phone of a test', sig: this.sign(enrolText(plain)), ...(firstSupervisor ? { firstSupervisor } : {}) })
    const answer = await this.ask(new Request(`${this.origin}/api/v1/enrol`, { method: 'POST', body, headers: { 'Content-Type': 'application/json' } }))
    if (answer.status !== 200) throw new Error(`enrol: ${answer.status} ${await answer.text()}`)
    const receipt = (await answer.json()) as Receipt
    this.dev = receipt.dev
    this.epoch = receipt.epoch
    this.h = receipt.seed
    return receipt
  }

  /** A signed request, not sent yet, with a nonce fetched for it. */
  async request(method: string, path: string, body?: string | Uint8Array<ArrayBuffer>, extra: Record<string, string> = {}): Promise<Request> {
    const nonce = (await this.ask(new Request(`${this.origin}/api/v1/hello`))).headers.get('Next-Nonce')!
    const sig = this.sign(requestText({ method, path, bodySha256: sha256(body ?? ''), nonce }))
    const headers = { Authorization: authorizationText({ dev: this.dev, nonce, sig }), ...(typeof body === 'string' ? { 'Content-Type': 'application/json' } : {}), ...extra }
    return new Request(`${this.origin}${path}`, { method, headers, ...(body === undefined ? {} : { body }) })
  }

  /** Sends a signed request; asks again once where the server hands out a fresh nonce. */
  async send(method: string, path: string, body?: unknown, extra: Record<string, string> = {}): Promise<Response> {
    const text = body === undefined ? '' : typeof body === 'string' ? body : JSON.stringify(body)
    const once = async (): Promise<Response> => {
      const nonce = this.#nonce || 'n'.repeat(20)
      const sig = this.sign(requestText({ method, path, bodySha256: sha256(text), nonce }))
      const headers = { Authorization: authorizationText({ dev: this.dev, nonce, sig }), ...(text ? { 'Content-Type': 'application/json' } : {}), ...extra }
      const answer = await this.ask(new Request(`${this.origin}${path}`, { method, headers, ...(text ? { body: text } : {}) }))
      this.#nonce = answer.headers.get('Next-Nonce') ?? ''
      return answer
    }
    const first = await once()
    if (first.status !== 401) return first
    const refusal = (await first.clone().json()) as { error: string; nonce?: string }
    if (refusal.error !== 'nonce' || !refusal.nonce) return first
    this.#nonce = refusal.nonce
    return once()
  }

  /** The next entry of this device's chain. */
  entry(kind = 'note', data: Record<string, unknown> = { text: 'written in a test', about: 'general' }, op: string | null = null, blobs: readonly Hash[] = []): Sealed {
    const at = Date.now()
    const entry = {
      v: 1, id: newId(at), dev: this.dev, seq: this.seq + 1, prev: this.h, kind, at: new Date(at).toISOString(), tz: 'Europe/Lisbon',
      sess: this.sess, mono: Math.floor(performance.now()), skew: null, op, data, blobs: [...blobs],
    } as Envelope
    const h = sha256(canonical(entry))
    this.seq++
    this.h = h
    return { entry, h, sig: this.sign(signedText(h)) }
  }

  async push(entries: readonly Sealed[]): Promise<PushAnswer> {
    const answer = await this.send('POST', '/api/v1/push', { v: 1, dev: this.dev, epoch: this.epoch, entries })
    if (answer.status !== 200) throw new Error(`push: ${answer.status} ${await answer.text()}`)
    return (await answer.json()) as PushAnswer
  }

  async pullAll(): Promise<PullAnswer['entries']> {
    const entries: PullAnswer['entries'] = []
    for (let after = 0, more = true; more; ) {
      const answer = await this.send('GET', `/api/v1/pull?epoch=${this.epoch}&after=${after}&limit=500`)
      if (answer.status !== 200) throw new Error(`pull: ${answer.status} ${await answer.text()}`)
      const page = (await answer.json()) as PullAnswer
      entries.push(...page.entries)
      after = page.next
      more = page.more
    }
    return entries
  }

  presence(proof: string): Record<string, string> {
    return { [presenceHeader]: proof }
  }
}

export interface Supervisor {
  phone: Phone
  person: string
  passphrase: string
}

/** A proof that the supervisor has keyed the passphrase anew. */
export const proofOf = async ({ phone, person, passphrase }: Supervisor): Promise<string> => {
  const answer = await phone.send('POST', '/api/v1/presence', { person, passphrase })
  if (answer.status !== 200) throw new Error(`presence: ${answer.status} ${await answer.text()}`)
  return ((await answer.json()) as { proof: string }).proof
}

/** A further device, with a code that the supervisor issues and digits that the supervisor confirms. */
export const letIn = async (supervisor: Supervisor): Promise<Phone> => {
  const { ask, origin } = supervisor.phone
  const proof = supervisor.phone.presence(await proofOf(supervisor))
  const code = (await (await supervisor.phone.send('POST', '/api/v1/codes', undefined, proof)).json()) as { long: string }
  const phone = new Phone(ask, origin)
  const { digits } = await phone.enrol(code.long)
  const confirmed = await supervisor.phone.send('POST', `/api/v1/devices/${phone.dev}/confirm`, { digits }, proof)
  if (confirmed.status !== 200) throw new Error(`confirm: ${confirmed.status} ${await confirmed.text()}`)
  return phone
}
