import * as z from 'zod/mini'
import { stationId } from '../../plan/ids.ts'
import { entryId, instantText } from '../ids.ts'

/** Something left a bath or the bench for good: what, how much, and where it went. */
export const runOff = z.strictObject({
  /** Where it came from. */
  station: stationId,
  /** What it is, by the list of the trade's run-offs. */
  waste: z.string().check(z.minLength(1), z.maxLength(60)),
  litres: z.number().check(z.gt(0)),
  destination: z.discriminatedUnion('to', [
    z.strictObject({ to: z.literal('recovery') }),
    z.strictObject({ to: z.literal('drain') }),
    z.strictObject({ to: z.literal('drum'), drum: z.string().check(z.minLength(1), z.maxLength(60)) }),
  ]),
  exception: z.optional(entryId),
  remark: z.optional(z.string().check(z.maxLength(500))),
  notedAt: z.optional(instantText),
})
export type RunOff = z.infer<typeof runOff>

/** A drum was closed and handed over; from here on it is an empty one. */
export const drumOut = z.strictObject({
  drum: z.string().check(z.minLength(1), z.maxLength(60)),
  station: stationId,
  /** To whom, and the number of the paper that goes with it. */
  to: z.string().check(z.minLength(1), z.maxLength(200)),
  notedAt: z.optional(instantText),
})
export type DrumOut = z.infer<typeof drumOut>
