import type { DeviceId } from '../record/ids.ts'
import type { Signer } from '../record/seal.ts'
import { authorizationText, nonceHeader, requestText } from '../wire/auth.ts'
import type { Clock } from './clock.ts'
import { sha256OfBytes } from './web-seal.ts'

export interface Caller {
  dev: DeviceId
  signer: Signer
}

export interface CourierParts {
  /** The browser's own, or in tests the server's `app.request`. */
  fetch(path: string, init: RequestInit): Promise<Response>
  clock: Clock
  /** Who signs; undefined before enrolment. */
  caller(): Promise<Caller | undefined>
  /** Where any nonce is to be had without one: the path of `hello`. */
  helloPath: string
}

export interface Errand {
  method: string
  path: string
  isSigned: boolean
  headers?: Readonly<Record<string, string>>
  body?: Uint8Array<ArrayBuffer>
  timeoutMs?: number
  signal?: AbortSignal | undefined
}

export type Carried =
  /** Whatever was answered, refusals too. Times by the wall clock, the travel measured by the monotonic one. */
  | { ok: true; response: Response; sentAt: number; answeredAt: number }
  | { ok: false; problem: { code: 'unreachable' | 'timeout' } }

export interface Courier {
  carry(errand: Errand): Promise<Carried>
}

/** Browsers of before 2024 have no `any`. */
const eitherOf = (one: AbortSignal, other: AbortSignal): AbortSignal => {
  if (AbortSignal.any) return AbortSignal.any([one, other])
  const both = new AbortController()
  const aborted = [one, other].find((it) => it.aborted)
  if (aborted) both.abort(aborted.reason)
  for (const signal of [one, other])
    signal.addEventListener('abort', () => both.abort(signal.reason), { once: true, signal: both.signal })
  return both.signal
}

const usualTimeoutMs = 20_000
const empty = new Uint8Array()

/** Carries requests signed as the wire has it, with the server's nonces. Knows no message; page and service worker share it. */
export const createCourier = ({ fetch, clock, caller, helloPath }: CourierParts): Courier => {
  /** Each serves once; every answer to a device brings the next. */
  const nonces: string[] = []

  const send = async ({ method, path, headers, body = empty, timeoutMs = usualTimeoutMs, signal }: Omit<Errand, 'isSigned'>): Promise<Carried> => {
    const timeout = AbortSignal.timeout(timeoutMs)
    const sentAt = clock.wall()
    const from = clock.monotonic()
    try {
      const init: RequestInit = { method, cache: 'no-store', signal: signal ? eitherOf(signal, timeout) : timeout }
      const response = await fetch(path, { ...init, ...(headers ? { headers: { ...headers } } : {}), ...(body.length ? { body } : {}) })
      const next = response.headers.get(nonceHeader)
      if (next) nonces.push(next)
      return { ok: true, response, sentAt, answeredAt: sentAt + clock.monotonic() - from }
    } catch (thrown) {
      return { ok: false, problem: { code: isTimeout(thrown) ? 'timeout' : 'unreachable' } }
    }
  }

  return {
    async carry(errand) {
      const who = errand.isSigned ? await caller() : undefined
      if (!who) return send(errand)
      const bodySha256 = await sha256OfBytes(errand.body ?? empty)
      for (let isSecond = false; ; isSecond = true) {
        let nonce = nonces.shift()
        if (nonce === undefined) {
          const hello = await send({ method: 'GET', path: helloPath })
          if (!hello.ok) return hello
          nonce = nonces.shift()
          // Whoever answered there, it was not this server.
          if (nonce === undefined) return hello.response.ok ? { ...hello, response: new Response(null, { status: 502 }) } : hello
        }
        const sig = await who.signer.sign(requestText({ method: errand.method, path: errand.path, bodySha256, nonce }))
        const carried = await send({ ...errand, headers: { ...errand.headers, Authorization: authorizationText({ dev: who.dev, nonce, sig }) } })
        if (!carried.ok || carried.response.status !== 401 || isSecond) return carried
        const fresh = await nonceIn(carried.response.clone())
        if (fresh === undefined) return carried
        // The server was started anew, or the phone slept: what was put by no longer counts.
        nonces.splice(0, nonces.length, fresh)
      }
    },
  }
}

export const isTimeout = (thrown: unknown): boolean => thrown instanceof Error && thrown.name === 'TimeoutError'

/** The fresh nonce in a refusal of the last one; undefined in any other refusal. */
const nonceIn = async (response: Response): Promise<string | undefined> => {
  try {
    const { error, nonce } = (await response.json()) as { error?: unknown; nonce?: unknown }
    return error === 'nonce' && typeof nonce === 'string' ? nonce : undefined
  } catch {
    return undefined
  }
}
