import { readEpoch } from '../database/facts.ts'
import { readPerson } from '../database/people.ts'
import { planInForce } from '../database/plans.ts'
import { Refused } from '../http/refused.ts'
import type { Parts } from '../parts.ts'
import { isKnownSupervisor } from './authority.ts'
import { readProof } from './proof.ts'

/** The supervisor behind the header `Presence`: on this device, in this epoch, not since given another passphrase, and still one. */
export const provenSupervisor = async (parts: Parts, device: { dev: string }, header: string | undefined): Promise<string> => {
  const { sql } = parts.database
  const presence = header === undefined ? undefined : readProof(parts.key, header)
  if (!presence || presence.about !== '' || presence.dev !== device.dev) throw new Refused('presence')
  const now = parts.clock()
  const person = await readPerson(sql, presence.person)
  const isCurrent = now >= presence.from && now <= presence.until && presence.epoch === (await readEpoch(sql))
  if (!isCurrent || !person || person.set_at > presence.from) throw new Refused('presence')
  if (!(await isKnownSupervisor(sql, await planInForce(sql, now), presence.person))) throw new Refused('forbidden', { detail: 'role' })
  return presence.person
}
