import type { DeviceId, Hash } from '../record/ids.ts'
import { deviceId } from '../record/ids.ts'

/**
 * How a device signs a request: `Authorization: Device dev:nonce:sig`, the signature over method, path with query, SHA-256 of the body's
 * bytes (of the empty text where there is none) and a nonce. The nonce is the server's, so a wrong clock on the phone locks nobody out:
 * every answer to a device carries the next one in the header `Next-Nonce`, and a refusal `nonce` (401) carries one in its body.
 * A nonce serves once and for five minutes.
 */
export interface SignedRequest {
  method: string
  /** As in the request line: `/api/v1/pull?after=12`. */
  path: string
  bodySha256: Hash
  nonce: string
}

export const nonceHeader = 'Next-Nonce'
export const presenceHeader = 'Presence'

export const requestText = ({ method, path, bodySha256, nonce }: SignedRequest): string =>
  `r1|${method.toUpperCase()}|${path}|${bodySha256}|${nonce}`

export interface Authorization {
  dev: DeviceId
  nonce: string
  /** ECDSA P-256 over `requestText`, r‖s, base64url. */
  sig: string
}

export const authorizationText = ({ dev, nonce, sig }: Authorization): string => `Device ${dev}:${nonce}:${sig}`

const shape = /^Device ([0-9a-f]{16}):([A-Za-z0-9_-]{16,128}):([A-Za-z0-9_-]{86})$/

export const parseAuthorization = (header: string): Authorization | undefined => {
  const [, dev, nonce, sig] = shape.exec(header) ?? []
  return dev && nonce && sig ? { dev: deviceId.parse(dev), nonce, sig } : undefined
}
