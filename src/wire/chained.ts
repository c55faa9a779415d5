import * as z from 'zod/mini'
import { deviceId, entryId, hash } from '../record/ids.ts'

/** As much of an entry as the chain needs. The rest may be of a later version, or wrong: it is kept and passed on all the same. */
export const chained = z.looseObject({ v: z.int().check(z.minimum(1)), id: entryId, dev: deviceId, seq: z.int().check(z.minimum(1)), prev: hash })
export type Chained = z.infer<typeof chained>
