import { readEpoch } from '../database/facts.ts'
import { note } from '../database/log.ts'
import { planInForce } from '../database/plans.ts'
import { Refused } from '../http/refused.ts'
import { isKnownSupervisor } from '../people/authority.ts'
import { makeProof, proofMs } from '../people/proof.ts'
import type { Handler } from './given.ts'

export const presence: Handler<'presence'> = async ({ parts, device, request, passphrases }) => {
  const { sql } = parts.database
  const about = { dev: device.dev, person: request.person }
  await passphrases.check(request.person, request.passphrase).catch(async (error: unknown) => {
    if (error instanceof Refused && error.answer.error === 'passphrase') await note(sql, parts.clock(), 'passphraseWrong', about)
    throw error
  })
  const now = parts.clock()
  if (!(await isKnownSupervisor(sql, await planInForce(sql, now), request.person))) throw new Refused('forbidden', { detail: 'role' })
  await note(sql, now, 'presence', { ...about, detail: request.about ? 'sign' : 'manage' })
  const until = now + proofMs
  return { proof: makeProof(parts.key, { ...about, epoch: await readEpoch(sql), from: now, until, about: request.about ?? '' }), until }
}
