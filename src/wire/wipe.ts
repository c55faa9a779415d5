import * as z from 'zod/mini'
import { personId } from '../plan/ids.ts'
import { receipt } from './receipt.ts'

/**
 * Forgets an invented laboratory: entries, photos, other devices, codes. The name of the laboratory shows which is meant. Nothing of it was ever real, so
 * no passphrase is asked for; `person` is who keeps theirs, of those that have one.
 */
export const wipeRequest = z.strictObject({ laboratory: z.string().check(z.maxLength(80)), person: z.optional(personId) })
export type WipeRequest = z.infer<typeof wipeRequest>

/** The device that wiped stays enrolled, with a new id and chain in the new epoch; one supervisor stays too. */
export const wipeAnswer = z.strictObject({ receipt })
export type WipeAnswer = z.infer<typeof wipeAnswer>
