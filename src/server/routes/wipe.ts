import { insertDevice } from '../database/devices.ts'
import { beginEpoch } from '../database/facts.ts'
import { lockReach } from '../database/head.ts'
import { note } from '../database/log.ts'
import { readPeople } from '../database/people.ts'
import { hasRealPlan, planInForce } from '../database/plans.ts'
import { forgetEverything } from '../database/wipe.ts'
import { Refused } from '../http/refused.ts'
import { deviceRow, receiptFor } from '../people/new-device.ts'
import type { Handler } from './given.ts'

/**
 * Only an invented laboratory can be wiped, and any of its phones may ask. A plan that is not marked so, even one that takes force later, keeps the record
 * for good.
 */
export const wipe: Handler<'wipe'> = async ({ parts, device, request }) =>
  parts.database.transact(async (tx) => {
    await lockReach(tx)
    const now = parts.clock()
    const plan = await planInForce(tx, now)
    if (!plan?.isDemo || plan.name !== request.laboratory || (await hasRealPlan(tx))) throw new Refused('notDemo')
    const people = await readPeople(tx)
    const person = (people.find((it) => it.person === request.person) ?? people[0])?.person
    if (person === undefined) throw new Refused('notDemo')
    await forgetEverything(tx, { person })
    const epoch = Buffer.from(parts.random(8)).toString('hex')
    await beginEpoch(tx, { epoch, since: now, why: 'wiped' })
    const row = deviceRow({
      dev: Buffer.from(parts.random(8)).toString('hex'), name: device.name, key: { kty: 'EC', crv: 'P-256', x: device.key_x, y: device.key_y }, state: 'enrolled', epoch, now,
    })
    await insertDevice(tx, row)
    await note(tx, now, 'wiped', { dev: row.dev, person, detail: plan.name })
    await parts.database.announce(tx, { event: 'devices', data: {} })
    return { receipt: receiptFor(parts.key, row, person) }
  })
