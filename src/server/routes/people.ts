import { note } from '../database/log.ts'
import { readPeople, readPerson, removePerson, writePerson } from '../database/people.ts'
import { planInForce } from '../database/plans.ts'
import { Refused } from '../http/refused.ts'
import type { Parts } from '../parts.ts'
import type { PeopleAnswer } from '../../wire/people.ts'
import { isKnownSupervisor } from '../people/authority.ts'
import type { Handler } from './given.ts'
import { provenSupervisor } from '../people/presence-header.ts'

const everybody = async (parts: Parts): Promise<PeopleAnswer> => {
  const plan = await planInForce(parts.database.sql, parts.clock())
  const rows = await readPeople(parts.database.sql)
  const roles = new Map(plan?.people.map(({ id, role }) => [id as string, role]))
  const known = rows.map(({ person, name }) => ({ person, name, hasPassphrase: true, supervisor: roles.get(person) !== 'operator' }))
  const others = (plan?.people ?? []).filter(({ id }) => !rows.some(({ person }) => person === id))
  return { people: [...known, ...others.map(({ id, name }) => ({ person: id, name, hasPassphrase: false, supervisor: false }))] }
}

export const people: Handler<'people'> = ({ parts }) => everybody(parts)

/** One's own with the current one; anybody else's, or a first or forgotten one, with a supervisor's presence. */
export const setPassphrase: Handler<'setPassphrase'> = async ({ parts, c, device, params, request, passphrases }) => {
  const { sql } = parts.database
  const now = parts.clock()
  const by =
    request.current === undefined ? await provenSupervisor(parts, device, c.req.header('presence')) : (await passphrases.check(params.person, request.current)).person
  const plan = await planInForce(sql, now)
  const name = (await readPerson(sql, params.person))?.name ?? plan?.people.find(({ id }) => id === params.person)?.name ?? request.name
  if (name === undefined) throw new Refused('notFound', { detail: 'person' })
  const row = await passphrases.row(params.person, name, request.passphrase)
  await parts.database.transact(async (tx) => {
    await writePerson(tx, row)
    await note(tx, now, 'passphraseSet', { dev: device.dev, person: params.person, detail: `by ${by}` })
  })
  return everybody(parts)
}

export const removePassphrase: Handler<'removePassphrase'> = async ({ parts, device, params, supervisor }) => {
  const { database } = parts
  if (!(await readPerson(database.sql, params.person))) throw new Refused('notFound', { detail: 'person' })
  await database.transact(async (tx) => {
    await removePerson(tx, params.person)
    const plan = await planInForce(tx, parts.clock())
    const left = await Promise.all((await readPeople(tx)).map(({ person }) => isKnownSupervisor(tx, plan, person)))
    if (!left.includes(true)) throw new Refused('lastSupervisor')
    await note(tx, parts.clock(), 'passphraseRemoved', { dev: device.dev, person: params.person, detail: `by ${supervisor}` })
  })
  return everybody(parts)
}
