import type { PublicKey } from '../../record/seal.ts'
import { plainCode } from '../../wire/code.ts'
import type { Receipt } from '../../wire/receipt.ts'
import { enrolText, receiptText, seedText, thumbprintText } from '../../wire/signed-texts.ts'
import { readCode, useCode, voidCodes } from '../database/codes.ts'
import { insertDevice, readDevice } from '../database/devices.ts'
import { endedByWipe, readEpoch } from '../database/facts.ts'
import { lockReach } from '../database/head.ts'
import { note } from '../database/log.ts'
import { readPeople, writePerson } from '../database/people.ts'
import { planInForce } from '../database/plans.ts'
import type { CodeRow, PersonRow } from '../database/tables.ts'
import { limitKey } from '../http/address.ts'
import { Refused } from '../http/refused.ts'
import { readPublicKey, sha256, verifyText } from '../keys.ts'
import { codeHash } from '../people/issue-code.ts'
import { deviceRow, receiptFor } from '../people/new-device.ts'
import { personIdFor } from '../people/person-id.ts'
import type { Given, Handler } from './given.ts'

const mustHold = (key: PublicKey, text: string, sig: string): void => {
  const object = readPublicKey(key)
  if (!object) throw new Refused('badRequest', { detail: 'key' })
  if (!verifyText(object, text, sig)) throw new Refused('unauthorised')
}

/** An answer that got lost is given again to the same key; to another, the code is spent. */
const receiptAgain = async ({ parts, request }: Given<'enrol'>, code: CodeRow): Promise<Receipt> => {
  const row = await readDevice(parts.database.sql, code.used_by ?? '')
  if (row?.key_x !== request.key.x || row.key_y !== request.key.y) throw new Refused('codeUsed')
  return receiptFor(parts.key, row, code.person ?? undefined)
}

const openCode = async (given: Given<'enrol'>): Promise<CodeRow> => {
  const { parts, request, client, codeTries } = given
  const key = limitKey(client.address)
  const code = await readCode(parts.database.sql, codeHash(parts.key, plainCode(request.code)))
  if (code && (code.used_at !== null || code.until >= parts.clock())) return code
  codeTries.take(key)
  if (codeTries.wrong()) {
    await voidCodes(parts.database.sql, ['device'])
    await note(parts.database.sql, parts.clock(), 'codesVoided', { detail: key })
  }
  throw new Refused('codeUnknown')
}

/** The person a code from the terminal makes a supervisor; one of the plan in force, or known already, of the same name, is that one. */
const newSupervisor = async (given: Given<'enrol'>): Promise<PersonRow> => {
  const { parts, passphrases, request } = given
  if (!request.firstSupervisor) throw new Refused('badRequest', { detail: 'firstSupervisor' })
  const { name, passphrase } = request.firstSupervisor
  const { sql } = parts.database
  const [people, plan] = [await readPeople(sql), await planInForce(sql, parts.clock())]
  const same = people.find((it) => it.name === name)?.person ?? plan?.people.find((it) => it.name === name && it.role === 'supervisor')?.id
  const taken = new Set([...people.map((it) => it.person), ...(plan?.people ?? []).map((it) => it.id as string)])
  return passphrases.row(same ?? personIdFor(name, taken), name, passphrase)
}

export const enrol: Handler<'enrol'> = async (given) => {
  const { parts, request } = given
  const plain = plainCode(request.code)
  mustHold(request.key, enrolText(plain), request.sig)
  const code = await openCode(given)
  if (code.used_at !== null) return receiptAgain(given, code)
  const supervisor = code.purpose === 'device' ? undefined : await newSupervisor(given)
  if (!supervisor && request.firstSupervisor) throw new Refused('badRequest', { detail: 'firstSupervisor' })
  const dev = Buffer.from(parts.random(8)).toString('hex')
  return parts.database.transact(async (tx) => {
    await lockReach(tx)
    const now = parts.clock()
    if (!(await useCode(tx, code, { at: now, by: dev, person: supervisor?.person ?? null }))) throw new Refused('codeUsed')
    const row = deviceRow({ dev, name: request.name, key: request.key, state: supervisor ? 'enrolled' : 'waiting', epoch: await readEpoch(tx), now })
    await insertDevice(tx, row)
    await note(tx, now, 'enrolled', { dev, detail: request.name })
    if (supervisor) {
      await writePerson(tx, supervisor)
      await voidCodes(tx, ['first'])
      await note(tx, now, 'claimed', { dev, person: supervisor.person })
    }
    await parts.database.announce(tx, { event: 'devices', data: {} })
    return receiptFor(parts.key, row, supervisor?.person)
  })
}

/** A device enrolled after the backup was made from which this server was restored: the server's own signature on its receipt tells. */
export const enrolAgain: Handler<'enrolAgain'> = async ({ parts, request }) => {
  const { dev, epoch, seed, sig } = request.receipt
  mustHold(request.key, enrolText(sig), request.sig)
  const fits = seed === sha256(seedText({ dev, epoch, thumbprint: sha256(thumbprintText(request.key)) }))
  if ((await endedByWipe(parts.database.sql, epoch)) || !fits || !parts.key.verify(receiptText({ dev, epoch, seed }), sig)) throw new Refused('unauthorised')
  return parts.database.transact(async (tx) => {
    await lockReach(tx)
    const known = await readDevice(tx, dev)
    if (known && known.state !== 'waiting' && known.state !== 'enrolled') throw new Refused(known.state)
    if (known) return receiptFor(parts.key, known)
    const now = parts.clock()
    const row = deviceRow({ dev, name: request.name, key: request.key, state: 'waiting', epoch, now })
    await insertDevice(tx, row)
    await note(tx, now, 'enrolledAgain', { dev, detail: request.name })
    await parts.database.announce(tx, { event: 'devices', data: {} })
    return receiptFor(parts.key, row)
  })
}
