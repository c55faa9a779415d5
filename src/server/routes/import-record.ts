import { readDevice } from '../database/devices.ts'
import { note } from '../database/log.ts'
import { Refused } from '../http/refused.ts'
import { push } from '../ingest/push.ts'
import type { Handler } from './given.ts'
import { countPushed } from './push.ts'

/** Entries out of an export of the record. What is there already is acknowledged and left as it is; what does not follow is refused, as for a push. */
export const importRecord: Handler<'importRecord'> = async ({ parts, device, request }) => {
  const from = await readDevice(parts.database.sql, request.dev)
  if (!from) throw new Refused('notFound', { detail: 'dev' })
  if (from.state === 'waiting') throw new Refused('notConfirmed')
  const pushed = await push(parts, from.dev, { epoch: undefined, entries: request.entries })
  countPushed(parts, pushed)
  await note(parts.database.sql, parts.clock(), 'imported', { dev: from.dev, detail: `${pushed.stored.length} of ${request.entries.length} of a record by ${device.dev}` })
  return pushed.answer
}
