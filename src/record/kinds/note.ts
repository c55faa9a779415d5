import * as z from 'zod/mini'
import { machineId, stationId } from '../../plan/ids.ts'
import { entryId, hash, instantText } from '../ids.ts'

export const note = z.strictObject({
  text: z.string().check(z.minLength(1), z.maxLength(4000)),
  /** `cause`: why a value was out, said of the exception that it names. */
  about: z.enum(['general', 'incident', 'waste', 'maintenance', 'handover', 'cause']),
  machine: z.optional(machineId),
  station: z.optional(stationId),
  exception: z.optional(entryId),
  /** When it was so, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
})
export type Note = z.infer<typeof note>

/** A picture that belongs to another entry; its bytes follow by themselves. */
export const photo = z.strictObject({
  of: entryId,
  sha256: hash,
  bytes: z.number(),
  widthPixels: z.number(),
  heightPixels: z.number(),
})
export type Photo = z.infer<typeof photo>
