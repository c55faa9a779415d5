import { Hono, type Context } from 'hono'
import type * as z from 'zod/mini'
import { nonceHeader, presenceHeader } from '../../wire/auth.ts'
import { largestBlobBytes } from '../../wire/blobs.ts'
import { largestPush } from '../../wire/largest.ts'
import { wireVersion } from '../../wire/messages.ts'
import { routes, type Route, type RouteName } from '../../wire/routes.ts'
import { largestImportBytes } from '../../wire/unsent-file.ts'
import type { DeviceRow } from '../database/tables.ts'
import { Limiter } from '../limiter.ts'
import type { Parts } from '../parts.ts'
import { CodeTries } from '../people/code-tries.ts'
import { Passphrases } from '../people/passphrase.ts'
import { provenSupervisor } from '../people/presence-header.ts'
import { loosely, type Services } from '../routes/given.ts'
import { handlersFor } from '../routes/handlers.ts'
import { limitKey } from './address.ts'
import { authenticate } from './device-auth.ts'
import type { Env } from './env.ts'
import type { Nonces } from './nonces.ts'
import { parseJson, readBytes } from './read-body.ts'
import { Refused } from './refused.ts'

const usualBytes = 64 << 10
const mostBytes: Partial<Record<RouteName, number>> = { push: largestPush.bytes, import: largestImportBytes, importRecord: largestPush.bytes, putBlob: largestBlobBytes }

const parse = (schema: z.ZodMiniType, value: unknown): unknown => {
  const parsed = schema.safeParse(value)
  if (parsed.success) return parsed.data
  const path = parsed.error.issues[0]?.path.join('.') ?? ''
  if (path === 'v') throw new Refused('unknownVersion', { detail: String(wireVersion) })
  throw new Refused('badRequest', { detail: path })
}

/** Whether a device in this state may use this route. */
const mayUse = (who: Route['who'], state: DeviceRow['state']): boolean =>
  who === 'anyDevice' || state === 'enrolled' || (who === 'notWaiting' && state !== 'waiting')

/**
 * Every route of the table in the same steps: how often, whose, how large, what it says, the handler, the answer. A handler is never
 * reached by a request that its line in the table does not allow.
 */
export const api = (parts: Parts, nonces: Nonces): Hono<Env> => {
  const services: Services = { parts, passphrases: new Passphrases(parts), codeTries: new CodeTries(parts.limits, parts.clock) }
  const handlers = handlersFor(parts)
  const strangers = new Limiter(parts.limits.stranger, parts.clock)
  const perDevice = new Limiter(parts.limits.device, parts.clock)

  const take = (limiter: Limiter, key: string): void => {
    const taken = limiter.take(key)
    if (!taken.ok) throw new Refused('tooMany', { retryAfter: taken.retryAfter })
  }

  const identify = async (c: Context<Env>, name: RouteName, most: number): Promise<{ device?: DeviceRow; supervisor: string; bytes: Uint8Array }> => {
    const { who } = routes[name]
    const address = limitKey(c.var.client.address)
    if (who === 'anyone') {
      if (name !== 'hello') take(strangers, address)
      return { supervisor: '', bytes: await readBytes(c, most, parts.limits) }
    }
    const { device, bytes } = await authenticate(c, parts, nonces, most).catch((error: unknown) => {
      if (error instanceof Refused && error.answer.error === 'unauthorised') take(strangers, address)
      throw error
    })
    c.set('device', device)
    take(perDevice, device.dev)
    const needed = who === 'supervisor' ? 'enrolled' : who
    if (!mayUse(needed, device.state)) throw new Refused(device.state === 'waiting' || device.state === 'enrolled' ? 'notConfirmed' : device.state)
    const supervisor = who === 'supervisor' ? await provenSupervisor(parts, device, c.req.header(presenceHeader)) : ''
    return { device, supervisor, bytes }
  }

  const serve = async (c: Context<Env>, name: RouteName): Promise<Response> => {
    c.set('routeName', name)
    const route: Route = routes[name]
    const { bytes, ...who } = await identify(c, name, mostBytes[name] ?? usualBytes)
    const schema = name === 'push' || name === 'import' ? loosely[name] : route.request
    const given = {
      ...services, ...who, c, client: c.var.client, bytes,
      params: route.params && parse(route.params, c.req.param()),
      query: route.query && parse(route.query, c.req.query()),
      request: schema === undefined || schema === 'bytes' ? undefined : parse(schema, parseJson(c, bytes)),
    }
    // The table ties each name to its own types; here all of them pass through one place.
    const answer = await (handlers[name] as unknown as (it: typeof given) => Promise<object>)(given)
    if (name === 'hello' || who.device) c.header(nonceHeader, nonces.give())
    if (answer instanceof Response) {
      for (const [key, value] of answer.headers) c.header(key, value)
      return answer.body ? c.body(answer.body, 200) : c.body(null, 200)
    }
    c.header('Cache-Control', 'no-store')
    return c.json(answer)
  }

  const app = new Hono<Env>()
  for (const name of Object.keys(routes) as RouteName[]) {
    const { method, path } = routes[name]
    app.on([method], [path.replace(/\{(\w+)\}/g, ':$1')], (c) => serve(c, name))
  }
  return app
}
