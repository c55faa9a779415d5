import * as z from 'zod/mini'
import { canonical } from '../record/canonical.ts'
import { sealed } from '../record/entry.ts'
import { deviceId, type Hash } from '../record/ids.ts'
import { pushAnswer } from './messages.ts'

/** What a phone could not send, as a file that any enrolled device may hand in. The entries prove themselves; the file's own signature shows that it is whole. */
export const unsentFile = z.strictObject({
  format: z.literal('bathkeeper-unsent'),
  v: z.literal(1),
  dev: deviceId,
  epoch: z.string(),
  name: z.string(),
  /** ISO 8601 with offset. */
  made: z.string(),
  entries: z.array(sealed).check(z.minLength(1), z.maxLength(20_000)),
  /** The phone's signature over `unsentText` of the SHA-256 of `unsentHashed`. */
  sig: z.string(),
})
export type UnsentFile = z.infer<typeof unsentFile>
export const largestImportBytes = 32 << 20

export const unsentHashed = (file: Omit<UnsentFile, 'sig'>): string =>
  canonical({ format: file.format, v: file.v, dev: file.dev, epoch: file.epoch, name: file.name, made: file.made, entries: file.entries.map(({ h }) => h) })
export const unsentText = (sha256: Hash): string => `x1|${sha256}`

/** As for a push, of the device that the file is from. */
export const importAnswer = pushAnswer
export type ImportAnswer = z.infer<typeof importAnswer>
