import { readDevice } from '../database/devices.ts'
import { readEpoch } from '../database/facts.ts'
import { readReach } from '../database/head.ts'
import { Refused } from '../http/refused.ts'
import { liveStream } from '../live-stream.ts'
import type { Handler } from './given.ts'

/** Open connections by device, of this process. */
export const liveWith = (): Handler<'live'> => {
  const open = new Map<string, number>()
  return async ({ parts, device }) => {
    const { sql } = parts.database
    const count = open.get(device.dev) ?? 0
    if (count >= parts.limits.liveConnectionsPerDevice) throw new Refused('tooMany', { retryAfter: 20 })
    const reach = await readReach(sql)
    open.set(device.dev, count + 1)
    parts.metrics.liveConnections += 1
    const stream = liveStream(parts, {
      first: { event: 'head', data: { gseq: reach.gseq, epoch: await readEpoch(sql) } },
      mayStay: async () => (await readDevice(sql, device.dev))?.state === 'enrolled',
      onEnd: () => {
        parts.metrics.liveConnections -= 1
        const left = (open.get(device.dev) ?? 1) - 1
        if (left) open.set(device.dev, left)
        else open.delete(device.dev)
      },
    })
    return new Response(stream, { headers: { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-store', 'X-Accel-Buffering': 'no' } })
  }
}
