import type * as z from 'zod/mini'
import type { Signer } from '../record/seal.ts'
import type { DeviceId } from '../record/ids.ts'
import { authorizationText, nonceHeader, presenceHeader, requestText } from '../wire/auth.ts'
import { refusal, type WireRefusal } from '../wire/messages.ts'
import { pathOf, routes, type AnswerOf, type RequestOf, type Route, type RouteName } from '../wire/routes.ts'
import type { Clock } from './clock.ts'
import { sha256OfBytes } from './web-seal.ts'

/** Why there is no answer. All of it is data: that a request fails is the ordinary life of a phone. */
export type DoorProblem =
  | { code: 'refused'; refusal: WireRefusal }
  /** No network, or nobody at that address. */
  | { code: 'unreachable' }
  | { code: 'timeout' }
  /** An answer that is not this server's: a log-in page of some network, a proxy's error, a server of another version. */
  | { code: 'strange'; status: number; detail: string }

export type Answered<A> =
  | { ok: true; answer: A; sentAt: number; answeredAt: number }
  | { ok: false; problem: DoorProblem }

export interface Caller {
  dev: DeviceId
  signer: Signer
}

export interface DoorParts {
  /** The browser's own, or in tests the server's `app.request`. */
  fetch(path: string, init: RequestInit): Promise<Response>
  clock: Clock
  /** Who signs; undefined before enrolment. */
  caller(): Promise<Caller | undefined>
  /** The server's clock, wherever an answer tells it. */
  onServerTime?(measured: { sentAt: number; answeredAt: number; serverTime: number }): void
}

export interface Ask {
  places?: Readonly<Record<string, string>>
  query?: Readonly<Record<string, string | number | undefined>>
  body?: unknown
  bytes?: Uint8Array<ArrayBuffer>
  /** Proof of a supervisor's presence, for what only a supervisor may do. */
  presence?: string
  timeoutMs?: number
  signal?: AbortSignal
}

export interface Door {
  call<N extends RouteName>(name: N, ask?: Ask & { body?: RequestOf<N> }): Promise<Answered<AnswerOf<N>>>
  /** As `call`, read with another schema than the table's. */
  read<A>(name: RouteName, schema: z.ZodMiniType<A>, ask?: Ask): Promise<Answered<A>>
  /** An answer of bytes, or the stream of live events, as it comes. */
  open(name: RouteName, ask?: Ask & { method?: 'HEAD' }): Promise<Answered<Response>>
}

const usualTimeoutMs = 20_000
const emptyBytes = new Uint8Array()

export const createDoor = ({ fetch, clock, caller, onServerTime }: DoorParts): Door => {
  /** Each serves once; every answer to a device brings the next. */
  const nonces: string[] = []

  const send = async (path: string, init: RequestInit, timeoutMs: number, signal: AbortSignal | undefined): Promise<Answered<Response>> => {
    const timeout = AbortSignal.timeout(timeoutMs)
    const sentAt = clock.wall()
    const from = clock.monotonic()
    try {
      const response = await fetch(path, { ...init, signal: signal ? AbortSignal.any([signal, timeout]) : timeout })
      const next = response.headers.get(nonceHeader)
      if (next) nonces.push(next)
      // By the monotonic clock, so that a wall clock set meanwhile does not count as travel.
      return { ok: true, answer: response, sentAt, answeredAt: sentAt + clock.monotonic() - from }
    } catch (thrown) {
      return { ok: false, problem: { code: isTimeout(thrown) ? 'timeout' : 'unreachable' } }
    }
  }

  const nextNonce = async (): Promise<Answered<string>> => {
    const kept = nonces.shift()
    if (kept) return { ok: true, answer: kept, sentAt: 0, answeredAt: 0 }
    const hello = await send(pathOf('hello'), { method: 'GET' }, usualTimeoutMs, undefined)
    if (!hello.ok) return hello
    await hello.answer.arrayBuffer().catch(() => undefined)
    const given = nonces.shift()
    return given ? { ...hello, answer: given } : { ok: false, problem: { code: 'strange', status: hello.answer.status, detail: nonceHeader } }
  }

  const open: Door['open'] = async (name, ask = {}) => {
    const route: Route = routes[name]
    const method = ask.method ?? route.method
    const path = pathOf(name, ask.places ?? {}) + queryText(ask.query)
    const body = ask.bytes ?? (ask.body === undefined ? emptyBytes : new TextEncoder().encode(JSON.stringify(ask.body)))
    const headers: Record<string, string> = {}
    if (ask.body !== undefined) headers['Content-Type'] = 'application/json'
    if (ask.bytes) headers['Content-Type'] = 'application/octet-stream'
    if (ask.presence) headers[presenceHeader] = ask.presence
    const who = route.who === 'anyone' ? undefined : await caller()
    for (let isSecond = false; ; isSecond = true) {
      if (who) {
        const nonce = await nextNonce()
        if (!nonce.ok) return nonce
        const text = requestText({ method, path, bodySha256: await sha256OfBytes(body), nonce: nonce.answer })
        headers['Authorization'] = authorizationText({ dev: who.dev, nonce: nonce.answer, sig: await who.signer.sign(text) })
      }
      const init = { method, headers, cache: 'no-store' as const, ...(body.length ? { body } : {}) }
      const sent = await send(path, init, ask.timeoutMs ?? usualTimeoutMs, ask.signal)
      if (!sent.ok || sent.answer.ok) return sent
      const problem = await refusalIn(sent.answer)
      if (isSecond || problem.code !== 'refused' || problem.refusal.error !== 'nonce') return { ok: false, problem }
      // The server was started anew or the phone slept: what was put by no longer counts.
      nonces.splice(0)
      if (problem.refusal.nonce) nonces.push(problem.refusal.nonce)
    }
  }

  const read: Door['read'] = async (name, schema, ask) => {
    const opened = await open(name, ask)
    if (!opened.ok) return opened
    let raw: unknown
    try {
      raw = await opened.answer.json()
    } catch (thrown) {
      // Cut off on the way, or no JSON at all.
      const isJson = opened.answer.headers.get('Content-Type')?.startsWith('application/json') ?? false
      if (isTimeout(thrown)) return { ok: false, problem: { code: 'timeout' } }
      return { ok: false, problem: isJson ? { code: 'unreachable' } : { code: 'strange', status: opened.answer.status, detail: 'not JSON' } }
    }
    const parsed = schema.safeParse(raw)
    if (parsed.success) {
      const { serverTime } = raw as { serverTime?: unknown }
      if (typeof serverTime === 'number') onServerTime?.({ sentAt: opened.sentAt, answeredAt: opened.answeredAt, serverTime })
      return { ...opened, answer: parsed.data }
    }
    return { ok: false, problem: { code: 'strange', status: opened.answer.status, detail: parsed.error.issues[0]?.path.join('.') ?? '' } }
  }

  return {
    open,
    read,
    call: <N extends RouteName>(name: N, ask?: Ask) => read(name, routes[name].answer as unknown as z.ZodMiniType<AnswerOf<N>>, ask),
  }
}

const isTimeout = (thrown: unknown): boolean => thrown instanceof Error && thrown.name === 'TimeoutError'

const queryText = (query: Ask['query']): string => {
  const pairs = Object.entries(query ?? {}).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]]))
  return pairs.length ? `?${new URLSearchParams(pairs).toString()}` : ''
}

const refusalIn = async (response: Response): Promise<DoorProblem> => {
  try {
    const parsed = refusal.safeParse(await response.json())
    if (parsed.success) return { code: 'refused', refusal: parsed.data }
  } catch {
    // No JSON: whoever answered, it was not this server.
  }
  return { code: 'strange', status: response.status, detail: '' }
}
