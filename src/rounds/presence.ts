import * as z from 'zod/mini'
import { stationId, type StationId } from '../plan/ids.ts'

/** A label was scanned at a place: for a while, what is read there is read by somebody who stands there. Kept on the phone. */
export const presence = z.strictObject({ station: stationId, since: z.number() })
export type Presence = z.infer<typeof presence>

/** Long enough to titrate or to let a hydrometer settle, too short to walk away and key from the bench. Own choice. */
const standsMinutes = 10

/** Whether somebody still counts as standing at a place. Another label scanned since has taken its place. */
export const standsAt = (it: Presence | undefined, station: StationId, now: number): boolean =>
  it !== undefined && it.station === station && now >= it.since && now - it.since <= standsMinutes * 60_000

export const presenceKey = 'presence'
