import { randomBytes } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import type { Database } from '../../src/server/database/database.ts'
import { insertDevice } from '../../src/server/database/devices.ts'
import { readEpoch } from '../../src/server/database/facts.ts'
import { deviceRow } from '../../src/server/people/new-device.ts'
import type { DeviceId, Hash } from '../../src/record/ids.ts'
import { Phone } from '../server/phone.ts'

/** Many phones that a server knows: put into its database, since letting them in one by one would take each of them a supervisor. */
export const crowd = async (database: Database, origins: readonly string[], count: number): Promise<Phone[]> => {
  const epoch = await readEpoch(database.sql)
  const phones: Phone[] = []
  await database.transact(async (tx) => {
    for (let index = 0; index < count; index++) {
      const phone = new Phone(fetch, origins[index % origins.length])
      const row = deviceRow({ dev: randomBytes(8).toString('hex'), name: `Phone ${index + 1}`, key: phone.jwk, state: 'enrolled', epoch, now: Date.now() })
      await insertDevice(tx, row)
      phone.dev = row.dev as DeviceId
      phone.epoch = epoch
      phone.h = row.seed as Hash
      phones.push(phone)
    }
  })
  return phones
}

/** Memory and open handles of a program, as Linux tells them. */
export const footprint = (pid: number): { megabytes: number; handles: number } => ({
  megabytes: Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024,
  handles: readdirSync(`/proc/${pid}/fd`).length,
})

/** The entries of one round along a machine. */
export const roundOf = (phone: Phone, entries: number) => Array.from({ length: entries }, (_, index) => phone.entry('note', { text: `Station ${index + 1} was read and stands where it stood an hour ago`, about: 'general', machine: 'neg-1' }, 'helena-sobral'))
