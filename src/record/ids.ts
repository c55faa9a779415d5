import * as z from 'zod/mini'

/** UUIDv7 (RFC 9562) made on the phone. */
export const entryId = z.string().check(z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)).brand<'EntryId'>()
export type EntryId = z.infer<typeof entryId>

/** Sixteen hex digits given by the server at enrolment. */
export const deviceId = z.string().check(z.regex(/^[0-9a-f]{16}$/)).brand<'DeviceId'>()
export type DeviceId = z.infer<typeof deviceId>

/** SHA-256 in hex. */
export const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/)).brand<'Hash'>()
export type Hash = z.infer<typeof hash>

/** An instant with its offset, as ISO 8601 writes it: `2026-01-12T06:40:00.000+01:00`. A month 13 would have no place in the order of time. */
export const instantText = z
  .string()
  .check(
    z.regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?(Z|[+-]\d{2}:\d{2})$/),
    z.refine((text) => Number.isFinite(Date.parse(text))),
  )
