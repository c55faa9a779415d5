import * as z from 'zod/mini'
import { formulaId, stationId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** A batch is begun after a formula of the plan in force. The sheet follows from formula and litres. */
export const mix = z.strictObject({
  plan: entryId,
  formula: formulaId,
  litres: z.number().check(z.gt(0)),
  /** Where it is mixed. */
  station: stationId,
  notedAt: z.optional(instantText),
})
export type Mix = z.infer<typeof mix>

/** One thing is in. */
export const mixStep = z.strictObject({
  mix: entryId,
  /** Its place on the sheet, from 0. */
  order: z.int().check(z.minimum(0)),
  substance: z.string(),
  amount: z.number().check(z.minimum(0)),
  unit: z.enum(['g', 'mL']),
  /** Temperature of the mix when it went in. */
  celsius: z.optional(z.number()),
  lot: z.optional(z.string().check(z.maxLength(60))),
  /** The entries by which its cautions were confirmed. */
  cautions: z.optional(z.array(entryId)),
  notedAt: z.optional(instantText),
})
export type MixStep = z.infer<typeof mixStep>

/** The new mix was measured and found good: it may be connected. */
export const mixCertificate = z.strictObject({
  mix: entryId,
  pH: z.number(),
  specificGravity: z.number(),
  /** What is written on the tank. */
  label: z.string().check(z.minLength(1), z.maxLength(120)),
  /** The strip that proved a developer. */
  strip: z.optional(entryId),
  notedAt: z.optional(instantText),
})
export type MixCertificate = z.infer<typeof mixCertificate>

/** The end of a batch: connected to the machine, or thrown away and why. */
export const mixEnd = z.strictObject({
  mix: entryId,
  how: z.enum(['connected', 'discarded']),
  why: z.optional(z.string().check(z.maxLength(500))),
  /** The bath that it is from now on, where it is not only fed to it: what was learned of the old one no longer counts. */
  newBath: z.optional(stationId),
  notedAt: z.optional(instantText),
})
export type MixEnd = z.infer<typeof mixEnd>
