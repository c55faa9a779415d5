import * as z from 'zod/mini'
import { checkId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** A number read at a check, as it was keyed or read, with the verdict that was shown. */
export const reading = z.strictObject({
  check: checkId,
  /** The plan entry whose limits judged it; old readings keep the limits they were judged by. */
  plan: entryId,
  value: z.number(),
  /** Exactly what was keyed, so that 8.60 stays 8.60. */
  keyed: z.string().check(z.minLength(1), z.maxLength(24)),
  unit: z.string(),
  how: z.enum(['keyed', 'read', 'worked']),
  verdict: z.enum(['IN', 'WARN', 'ACT']),
  /** When it was noted at the tank, where that differs from when it was keyed. */
  notedAt: z.optional(instantText),
  /** The reading that this one repeats, to confirm or to refute it. */
  repeatOf: z.optional(entryId),
  /** The reading that opened the exception which this one re-checks. */
  recheckOf: z.optional(entryId),
  round: z.optional(z.string()),
  atTank: z.optional(z.boolean()),
  /** Seconds spent at the station, settling included. */
  stationSeconds: z.optional(z.number()),
  /** It was far from the recent ones and was kept on a second look. */
  secondLook: z.optional(z.boolean()),
  /** What the camera read, before the person confirmed or mended it. */
  seen: z.optional(z.strictObject({ text: z.string(), certain: z.boolean() })),
  /** The calculation behind a worked value, with its inputs and result. */
  working: z.optional(z.strictObject({ calculation: z.string(), inputs: z.record(z.string(), z.unknown()), result: z.record(z.string(), z.unknown()) })),
})
export type Reading = z.infer<typeof reading>
