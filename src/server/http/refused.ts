import type { ContentfulStatusCode } from 'hono/utils/http-status'
import type { WireRefusal } from '../../wire/messages.ts'

export type RefusalCode = WireRefusal['error']

export const statusOf: Readonly<Record<RefusalCode, ContentfulStatusCode>> = {
  unknownVersion: 400, badRequest: 400, hash: 400, notDemo: 409, lastSupervisor: 409, epoch: 409, codeUsed: 409,
  unauthorised: 401, nonce: 401, presence: 401, passphrase: 401,
  forbidden: 403, crossSite: 403, codeUnknown: 403, digits: 403, notConfirmed: 403, revoked: 403, retired: 403, quarantined: 403,
  notFound: 404, timeout: 408, lengthRequired: 411, tooLarge: 413, encoded: 415, mediaType: 415, tooMany: 429, quota: 429,
  fault: 500, busy: 503, full: 507,
}

/** A request that is answered with a refusal. Thrown where it is found out, turned into an answer in one place. */
export class Refused extends Error {
  readonly answer: WireRefusal
  constructor(error: RefusalCode, facts: Omit<WireRefusal, 'error'> = {}) {
    super(facts.detail === undefined ? error : `${error} ${facts.detail}`)
    this.name = 'Refused'
    this.answer = { error, ...facts }
  }
}
