import { reportRequest } from '../wire/report.ts'
import { blobTotals } from './database/blobs.ts'
import { readDevices } from './database/devices.ts'
import { readReach } from './database/head.ts'
import type { Gauge } from './metrics.ts'
import type { Parts } from './parts.ts'

/** How things stand, read when asked. What waits on phones is what they last told. */
export const gauges = async (parts: Parts): Promise<Gauge[]> => {
  const { sql } = parts.database
  const [reach, devices, blobs] = [await readReach(sql), await readDevices(sql), await blobTotals(sql)]
  const states = new Map<string, number>()
  for (const { state } of devices) states.set(state, (states.get(state) ?? 0) + 1)
  const reports = devices.flatMap((row) => {
    const report = row.state === 'enrolled' && row.report !== null ? reportRequest.safeParse(JSON.parse(row.report)) : undefined
    return report?.success ? [{ dev: row.dev, ...report.data }] : []
  })
  const one = (name: string, help: string, value: number): Gauge => ({ name, help, values: [{ labels: {}, value }] })
  return [
    one('bathkeeper_record_head', 'Number of the last entry in the record.', reach.gseq),
    one('bathkeeper_blobs', 'Photos kept.', blobs.count),
    one('bathkeeper_blob_bytes', 'Bytes of photos kept.', blobs.bytes),
    { name: 'bathkeeper_devices', help: 'Devices by state.', values: [...states].map(([state, value]) => ({ labels: { state }, value })) },
    {
      name: 'bathkeeper_device_waiting_entries', help: 'Entries that wait on a device, as it last told.',
      values: reports.map(({ dev, waiting }) => ({ labels: { dev }, value: waiting })),
    },
    {
      name: 'bathkeeper_device_skew_seconds', help: 'Server clock minus device clock, as the device last told.',
      values: reports.flatMap(({ dev, skew }) => (skew ? [{ labels: { dev }, value: skew.ms / 1000 }] : [])),
    },
    one('process_resident_memory_bytes', 'Memory of this process.', process.memoryUsage.rss()),
    one('process_uptime_seconds', 'Time since this process started.', process.uptime()),
  ]
}
