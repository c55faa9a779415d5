import * as z from 'zod/mini'

/**
 * Live updates: Server-Sent Events read with `fetch` and a stream reader, because `EventSource` can send no `Authorization`. Each event is
 * `event: name`, `data: JSON`, blank line; a line that begins with a colon comes every 20 s so that a dead connection is noticed.
 * An event only says that there is something to pull; it carries nothing of the record.
 */
export const liveEvent = z.discriminatedUnion('event', [
  z.strictObject({ event: z.literal('head'), data: z.strictObject({ gseq: z.number(), epoch: z.string() }) }),
  /** The list of devices or what one told of itself has changed. */
  z.strictObject({ event: z.literal('devices'), data: z.strictObject({}) }),
  /** The server stops or has ended this device; come again after the pause. */
  z.strictObject({ event: z.literal('bye'), data: z.strictObject({ pauseMs: z.number() }) }),
])
export type LiveEvent = z.infer<typeof liveEvent>
