import * as z from 'zod/mini'
import { receipt } from './receipt.ts'

/** Forgets an invented laboratory: entries, photos, other devices, codes. The name of the laboratory is keyed to show that it is meant. */
export const wipeRequest = z.strictObject({ laboratory: z.string().check(z.maxLength(80)) })
export type WipeRequest = z.infer<typeof wipeRequest>

/** The device that wiped stays enrolled, with a new id and chain in the new epoch; its supervisor stays too. */
export const wipeAnswer = z.strictObject({ receipt })
export type WipeAnswer = z.infer<typeof wipeAnswer>
