import type { DeviceId, Hash } from '../../record/ids.ts'
import { wireVersion } from '../../wire/messages.ts'
import { readPeople } from '../database/people.ts'
import { readEpoch } from '../database/facts.ts'
import { currentHead } from '../ingest/push.ts'
import type { Handler } from './given.ts'

export const hello: Handler<'hello'> = async ({ parts }) => ({
  app: 'bathkeeper',
  wire: { oldest: wireVersion, newest: wireVersion },
  epoch: await readEpoch(parts.database.sql),
  claimed: (await readPeople(parts.database.sql)).length > 0,
  serverKey: parts.key.publicKey,
  serverTime: parts.clock(),
})

export const me: Handler<'me'> = async ({ parts, device }) => ({
  dev: device.dev as DeviceId,
  name: device.name,
  state: device.state,
  lastSeq: device.last_seq,
  lastHash: device.last_hash as Hash,
  epoch: await readEpoch(parts.database.sql),
  serverTime: parts.clock(),
  head: await currentHead(parts),
})
