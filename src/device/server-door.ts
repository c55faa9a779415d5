import type * as z from 'zod/mini'
import { presenceHeader } from '../wire/auth.ts'
import { refusal, type WireRefusal } from '../wire/messages.ts'
import { pathOf, routes, type AnswerOf, type RequestOf, type Route, type RouteName } from '../wire/routes.ts'
import { isTimeout, type Courier } from './courier.ts'

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

/** The server's routes as typed calls. */
export interface Door {
  call<N extends RouteName>(name: N, ask?: Ask & { body?: RequestOf<N> }): Promise<Answered<AnswerOf<N>>>
  /** As `call`, read with another schema than the table's. */
  read<A>(name: RouteName, schema: z.ZodMiniType<A>, ask?: Ask): Promise<Answered<A>>
  /** An answer of bytes, or the stream of live events, as it comes. */
  open(name: RouteName, ask?: Ask & { method?: 'HEAD' }): Promise<Answered<Response>>
}

/** The server's clock, wherever an answer tells it. */
export type OnServerTime = (measured: { sentAt: number; answeredAt: number; serverTime: number }) => void

export const createDoor = (courier: Courier, onServerTime: OnServerTime = () => undefined): Door => {
  const open: Door['open'] = async (name, { places = {}, query, body, bytes, presence, timeoutMs, signal, method } = {}) => {
    const route: Route = routes[name]
    const content = bytes ?? (body === undefined ? undefined : new TextEncoder().encode(JSON.stringify(body)))
    const carried = await courier.carry({
      method: method ?? route.method,
      path: pathOf(name, places) + queryText(query),
      isSigned: route.who !== 'anyone',
      headers: {
        ...(content ? { 'Content-Type': bytes ? 'application/octet-stream' : 'application/json' } : {}),
        ...(presence === undefined ? {} : { [presenceHeader]: presence }),
      },
      ...(content ? { body: content } : {}),
      ...(timeoutMs === undefined ? {} : { timeoutMs }),
      signal,
    })
    if (!carried.ok) return carried
    const { response, sentAt, answeredAt } = carried
    return response.ok ? { ok: true, answer: response, sentAt, answeredAt } : { ok: false, problem: await refusalIn(response) }
  }

  const read: Door['read'] = async (name, schema, ask) => {
    const opened = await open(name, ask)
    if (!opened.ok) return opened
    const { answer: response, sentAt, answeredAt } = opened
    let raw: unknown
    try {
      raw = await response.json()
    } catch (thrown) {
      if (isTimeout(thrown)) return { ok: false, problem: { code: 'timeout' } }
      // Cut off on the way, or no JSON at all.
      const isJson = response.headers.get('Content-Type')?.startsWith('application/json') ?? false
      return { ok: false, problem: isJson ? { code: 'unreachable' } : { code: 'strange', status: response.status, detail: 'not JSON' } }
    }
    const parsed = schema.safeParse(raw)
    if (!parsed.success) return { ok: false, problem: { code: 'strange', status: response.status, detail: parsed.error.issues[0]?.path.join('.') ?? '' } }
    const { serverTime } = raw as { serverTime?: unknown }
    if (typeof serverTime === 'number') onServerTime({ sentAt, answeredAt, serverTime })
    return { ok: true, answer: parsed.data, sentAt, answeredAt }
  }

  return {
    open,
    read,
    call: <N extends RouteName>(name: N, ask?: Ask) => read(name, routes[name].answer as unknown as z.ZodMiniType<AnswerOf<N>>, ask),
  }
}

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
