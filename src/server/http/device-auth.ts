import type { Context } from 'hono'
import { parseAuthorization, requestText } from '../../wire/auth.ts'
import { noteHeard, readDevice } from '../database/devices.ts'
import type { DeviceRow } from '../database/tables.ts'
import { readPublicKey, sha256, verifyText } from '../keys.ts'
import type { Parts } from '../parts.ts'
import type { Nonces } from './nonces.ts'
import { readBytes } from './read-body.ts'
import { Refused } from './refused.ts'

const heardEveryMs = 30_000

export const pathOfRequest = (c: Context): string => {
  const { pathname, search } = new URL(c.req.url)
  return pathname + search
}

/**
 * The device that signed this request. The body is read only once the device is known; the nonce is spent only for a good signature, so
 * that nobody else can use up a phone's.
 */
export const authenticate = async (c: Context, parts: Parts, nonces: Nonces, mostBytes: number): Promise<{ device: DeviceRow; bytes: Uint8Array }> => {
  const header = c.req.header('authorization')
  if (header === undefined) throw new Refused('nonce', { nonce: nonces.give() })
  const given = parseAuthorization(header)
  const device = given && (await readDevice(parts.database.sql, given.dev))
  const key = device && readPublicKey({ x: device.key_x, y: device.key_y })
  if (!given || !key) throw new Refused('unauthorised')
  const bytes = await readBytes(c, mostBytes, parts.limits)
  const text = requestText({ method: c.req.method, path: pathOfRequest(c), bodySha256: sha256(bytes), nonce: given.nonce })
  if (!verifyText(key, text, given.sig)) throw new Refused('unauthorised')
  if (!(await nonces.spend(parts.database.sql, given.nonce))) throw new Refused('nonce', { nonce: nonces.give() })
  const now = parts.clock()
  if (now - (device.heard_at ?? 0) > heardEveryMs) await noteHeard(parts.database.sql, device.dev, now)
  return { device, bytes }
}
