import * as z from 'zod/mini'
import { personId } from '../plan/ids.ts'
import { deviceId, hash } from '../record/ids.ts'
import { blobAnswer } from './blobs.ts'
import { asideAnswer, codesAnswer, confirmRequest, deviceAnswer, devicesAnswer, endRequest } from './devices.ts'
import { enrolAgainAnswer, enrolAgainRequest, helloAnswer, meAnswer } from './hello.ts'
import { largestPull } from './largest.ts'
import { enrolRequest, pullAnswer, pushAnswer, pushRequest, type WireRefusal } from './messages.ts'
import { receipt } from './receipt.ts'
import { logAnswer, passphraseRequest, peopleAnswer } from './people.ts'
import { presenceAnswer, presenceRequest } from './presence.ts'
import { recordImportAnswer, recordImportRequest } from './record-file.ts'
import { reportAnswer, reportRequest } from './report.ts'
import { importAnswer, unsentFile } from './unsent-file.ts'
import { wipeAnswer, wipeRequest } from './wipe.ts'

/**
 * | name          | method, path                        | who may                      | request → answer                    | refuses with, besides what every route may |
 * | ------------- | ----------------------------------- | ---------------------------- | ----------------------------------- | ------------------------------------------ |
 * | hello         | GET    /api/v1/hello                | anyone                       | → helloAnswer                       |                                            |
 * | enrol         | POST   /api/v1/enrol                | anyone with a one-time code  | enrolRequest → receipt              | codeUnknown codeUsed tooMany unauthorised  |
 * | enrolAgain    | POST   /api/v1/enrol/again          | holder of this server's receipt | enrolAgainRequest → receipt      | unauthorised revoked retired quarantined   |
 * | me            | GET    /api/v1/me                   | device, in any state         | → meAnswer                          |                                            |
 * | push          | POST   /api/v1/push                 | device, but not waiting      | pushRequest → pushAnswer            | notConfirmed, forbidden (another's dev); the rest is in its `error` |
 * | pull          | GET    /api/v1/pull                 | enrolled device              | pullQuery → pullAnswer              | epoch (detail: the new one)                |
 * | live          | GET    /api/v1/live                 | enrolled device              | → event stream of liveEvent         | tooMany                                    |
 * | report        | POST   /api/v1/report               | device, in any state         | reportRequest → reportAnswer        |                                            |
 * | import        | POST   /api/v1/import               | enrolled device              | unsentFile → importAnswer           | notFound (device), hash, unauthorised      |
 * | importRecord  | POST   /api/v1/import/record        | enrolled device              | recordImportRequest → recordImportAnswer | notFound (device), notConfirmed         |
 * | putBlob       | PUT    /api/v1/blob/{sha256}        | enrolled device              | bytes → blobAnswer                  | notFound (no entry names it), hash, mediaType, lengthRequired, quota |
 * | getBlob       | GET    /api/v1/blob/{sha256}        | enrolled device              | → bytes                             | notFound                                   |
 * | presence      | POST   /api/v1/presence             | enrolled device              | presenceRequest → presenceAnswer    | passphrase, tooMany                        |
 * | codes         | POST   /api/v1/codes                | supervisor                   | → codesAnswer                       |                                            |
 * | devices       | GET    /api/v1/devices              | enrolled device              | → devicesAnswer                     |                                            |
 * | confirm       | POST   /api/v1/devices/{dev}/confirm | supervisor                  | confirmRequest → deviceAnswer       | notFound, digits, tooMany                  |
 * | end           | POST   /api/v1/devices/{dev}/end    | supervisor                   | endRequest → deviceAnswer           | notFound                                   |
 * | aside         | GET    /api/v1/devices/{dev}/aside  | supervisor                   | → asideAnswer                       | notFound                                   |
 * | people        | GET    /api/v1/people               | enrolled device              | → peopleAnswer                      |                                            |
 * | setPassphrase | PUT    /api/v1/people/{person}/passphrase | enrolled device with the current one, or supervisor | passphraseRequest → peopleAnswer | passphrase, tooMany, notFound |
 * | removePassphrase | DELETE /api/v1/people/{person}/passphrase | supervisor          | → peopleAnswer                      | notFound, lastSupervisor                   |
 * | log           | GET    /api/v1/log                  | supervisor                   | logQuery → logAnswer                |                                            |
 * | wipe          | POST   /api/v1/wipe                 | enrolled device              | wipeRequest → wipeAnswer            | notDemo                                    |
 *
 * Device: `Authorization` as in `auth.ts`, made with `requestText`. Supervisor: an enrolled device that besides sends the header `Presence`
 * with a proof (`presence.ts`, without `about`) given to it in the last ten minutes.
 * Every route may refuse with: badRequest 400, unauthorised 401, nonce 401 (with a fresh one: sign again), presence 401, forbidden / notConfirmed /
 * revoked / retired / quarantined / crossSite 403, notFound 404, timeout 408, epoch 409, tooLarge 413, encoded / mediaType 415, tooMany 429, fault 500, busy 503, full 507.
 * `HEAD` of a blob answers without its bytes. JSON goes as `application/json`, never compressed, at most 24 levels deep.
 */
export interface Route {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE'
  /** Places in braces as OpenAPI writes them. */
  path: string
  who: 'anyone' | 'anyDevice' | 'notWaiting' | 'enrolled' | 'supervisor'
  says: string
  params?: z.ZodMiniType
  query?: z.ZodMiniType
  request?: z.ZodMiniType | 'bytes'
  answer: z.ZodMiniType | 'bytes' | 'events'
  refuses: readonly WireRefusal['error'][]
}

const whole = (text: unknown): unknown => (typeof text === 'string' && /^\d{1,15}$/.test(text) ? Number(text) : text)
const wholeInQuery = (schema: z.ZodMiniType<number>) => z.pipe(z.transform(whole), schema)

export const pullQuery = z.strictObject({
  /** Absent on the very first pull. */
  epoch: z.optional(z.string().check(z.maxLength(64))),
  after: wholeInQuery(z.int().check(z.minimum(0))),
  limit: z.optional(wholeInQuery(z.int().check(z.minimum(1), z.maximum(largestPull)))),
})
export type PullQuery = z.infer<typeof pullQuery>

/** Newest first, before line `before`. */
export const logQuery = z.strictObject({ before: z.optional(wholeInQuery(z.int().check(z.minimum(1)))) })

const ofDevice = z.strictObject({ dev: deviceId })
const ofBlob = z.strictObject({ sha256: hash })
const ofPerson = z.strictObject({ person: personId })

export const routes = {
  hello: { method: 'GET', path: '/api/v1/hello', who: 'anyone', says: 'What this server is', answer: helloAnswer, refuses: [] },
  enrol: {
    method: 'POST', path: '/api/v1/enrol', who: 'anyone', says: 'A device asks in with a one-time code',
    request: enrolRequest, answer: receipt, refuses: ['codeUnknown', 'codeUsed', 'tooMany', 'unauthorised'],
  },
  enrolAgain: {
    method: 'POST', path: '/api/v1/enrol/again', who: 'anyone', says: 'A device that a restored server has forgotten shows its receipt',
    request: enrolAgainRequest, answer: enrolAgainAnswer, refuses: ['unauthorised', 'revoked', 'retired', 'quarantined', 'tooMany'],
  },
  me: { method: 'GET', path: '/api/v1/me', who: 'anyDevice', says: 'What the server knows of the asking device', answer: meAnswer, refuses: [] },
  push: {
    method: 'POST', path: '/api/v1/push', who: 'notWaiting', says: 'Consecutive entries of the asking device',
    request: pushRequest, answer: pushAnswer, refuses: ['notConfirmed', 'unknownVersion', 'forbidden'],
  },
  pull: { method: 'GET', path: '/api/v1/pull', who: 'enrolled', says: 'A page of the record in its order', query: pullQuery, answer: pullAnswer, refuses: ['epoch'] },
  live: { method: 'GET', path: '/api/v1/live', who: 'enrolled', says: 'Tells when there is something to pull', answer: 'events', refuses: ['tooMany'] },
  report: {
    method: 'POST', path: '/api/v1/report', who: 'anyDevice', says: 'What waits on the phone, its clock and storage, the highest head it saw',
    request: reportRequest, answer: reportAnswer, refuses: [],
  },
  import: {
    method: 'POST', path: '/api/v1/import', who: 'enrolled', says: 'A file of unsent entries, of this device or another',
    request: unsentFile, answer: importAnswer, refuses: ['notFound', 'hash', 'unauthorised', 'notConfirmed'],
  },
  importRecord: {
    method: 'POST', path: '/api/v1/import/record', who: 'enrolled', says: 'Entries of any device out of an export of the record',
    request: recordImportRequest, answer: recordImportAnswer, refuses: ['notFound', 'notConfirmed', 'unknownVersion'],
  },
  putBlob: {
    method: 'PUT', path: '/api/v1/blob/{sha256}', who: 'enrolled', says: 'The bytes of a photo that an entry names',
    params: ofBlob, request: 'bytes', answer: blobAnswer, refuses: ['notFound', 'hash', 'mediaType', 'lengthRequired', 'quota'],
  },
  getBlob: { method: 'GET', path: '/api/v1/blob/{sha256}', who: 'enrolled', says: 'The bytes of a photo', params: ofBlob, answer: 'bytes', refuses: ['notFound'] },
  presence: {
    method: 'POST', path: '/api/v1/presence', who: 'enrolled', says: 'A supervisor keys the passphrase anew',
    request: presenceRequest, answer: presenceAnswer, refuses: ['passphrase', 'tooMany'],
  },
  codes: { method: 'POST', path: '/api/v1/codes', who: 'supervisor', says: 'A one-time code for a new device', answer: codesAnswer, refuses: [] },
  devices: { method: 'GET', path: '/api/v1/devices', who: 'enrolled', says: 'All devices and what they told of themselves', answer: devicesAnswer, refuses: [] },
  confirm: {
    method: 'POST', path: '/api/v1/devices/{dev}/confirm', who: 'supervisor', says: 'The digits on both screens agree',
    params: ofDevice, request: confirmRequest, answer: deviceAnswer, refuses: ['notFound', 'digits', 'tooMany'],
  },
  end: {
    method: 'POST', path: '/api/v1/devices/{dev}/end', who: 'supervisor', says: 'A device is lost or no longer used',
    params: ofDevice, request: endRequest, answer: deviceAnswer, refuses: ['notFound'],
  },
  aside: {
    method: 'GET', path: '/api/v1/devices/{dev}/aside', who: 'supervisor', says: 'Entries that did not fit a device’s chain',
    params: ofDevice, answer: asideAnswer, refuses: ['notFound'],
  },
  people: { method: 'GET', path: '/api/v1/people', who: 'enrolled', says: 'Who has a passphrase', answer: peopleAnswer, refuses: [] },
  setPassphrase: {
    method: 'PUT', path: '/api/v1/people/{person}/passphrase', who: 'enrolled', says: 'Sets or replaces a passphrase',
    params: ofPerson, request: passphraseRequest, answer: peopleAnswer, refuses: ['passphrase', 'presence', 'tooMany', 'notFound'],
  },
  removePassphrase: {
    method: 'DELETE', path: '/api/v1/people/{person}/passphrase', who: 'supervisor', says: 'Somebody is no longer a supervisor',
    params: ofPerson, answer: peopleAnswer, refuses: ['notFound', 'lastSupervisor'],
  },
  log: { method: 'GET', path: '/api/v1/log', who: 'supervisor', says: 'What the server noted of itself', query: logQuery, answer: logAnswer, refuses: [] },
  wipe: {
    method: 'POST', path: '/api/v1/wipe', who: 'enrolled', says: 'Forgets an invented laboratory',
    request: wipeRequest, answer: wipeAnswer, refuses: ['notDemo'],
  },
} as const satisfies Record<string, Route>

export type RouteName = keyof typeof routes
export type AnswerOf<N extends RouteName> = (typeof routes)[N]['answer'] extends z.ZodMiniType<infer A> ? A : never
export type RequestOf<N extends RouteName> = (typeof routes)[N] extends { request: z.ZodMiniType<infer R> } ? R : never

/** The path with its places filled: `pathOf('confirm', { dev })`. */
export const pathOf = (name: RouteName, places: Readonly<Record<string, string>> = {}): string =>
  routes[name].path.replace(/\{(\w+)\}/g, (_, place: string) => encodeURIComponent(places[place] ?? ''))
