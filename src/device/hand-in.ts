import type { Sealed } from '../record/entry.ts'
import type { EntryId } from '../record/ids.ts'
import type { Exchanging } from './exchange-parts.ts'
import { unsentFilesOf } from './export.ts'
import { StoreFault } from './faults.ts'
import { chainOf, identityOf, readFormer, type Former } from './former.ts'
import { enrolAgainRequestOf } from './epoch.ts'
import type { SendProblem } from './problems.ts'
import { sendProblemOf } from './send-problem-of.ts'

/** How long back everything is handed in, sent or not. */
const again = 90 * 86_400_000

/**
 * Hands in what this phone could not send while it was another device (its profile was forked, or it was enrolled anew): once for each
 * database of the server, and only then done with when the server has acknowledged every entry, or has kept aside what does not fit.
 */
export const handIn = async (parts: Exchanging): Promise<SendProblem | undefined> => {
  const { store, epoch } = parts
  let problem: SendProblem | undefined
  for (const dev of await store.keys('exports')) {
    try {
      const former = readFormer(await store.take('exports', dev), `exports/${dev}`)
      if (former.handedInto === epoch) continue
      const refused = await handInOne(parts, former)
      if (refused) problem = refused
      else await store.keep('exports', dev, { ...former, handedInto: epoch })
    } catch (thrown) {
      if (!(thrown instanceof StoreFault)) throw thrown
      problem = { code: 'store', fault: thrown.code, where: thrown.where }
    }
  }
  return problem
}

const handInOne = async (parts: Exchanging, former: Former): Promise<SendProblem | undefined> => {
  const { store, clock, door, epoch, onEntries } = parts
  // What was sent goes along: another history of it may have taken its place at a server that was put back.
  const rows = (await chainOf(store, former, 1)).filter(({ time, entry }) => entry.seq >= former.from || time >= clock.wall() - again)
  for (const file of await unsentFilesOf(identityOf(former), former.name, clock, rows as Sealed[])) {
    const answered = await door.call('import', { body: file, timeoutMs: 120_000 })
    if (!answered.ok) {
      const problem = sendProblemOf(answered.problem)
      if (problem.code === 'refused' && problem.error === 'notFound') return shownAgain(parts, former)
      return problem
    }
    const { acks, error } = answered.answer
    const acknowledged = new Set<EntryId>(acks.map(({ id }) => id))
    const others = file.entries.map(({ entry }) => entry.id).filter((id) => !acknowledged.has(id))
    if (others.length && error?.code !== 'fork') return { code: 'refused', error: error?.code ?? 'import' }
    const apart = await store.setApart(others, epoch)
    if (apart.length) onEntries(apart)
  }
  return undefined
}

/** A server put back to before that device was let in is shown its receipt; a supervisor must let it in again. */
const shownAgain = async ({ door }: Exchanging, former: Former): Promise<SendProblem | undefined> => {
  const answered = await door.call('enrolAgain', { body: await enrolAgainRequestOf(identityOf(former), former.name) })
  if (answered.ok) return { code: 'notConfirmed' }
  const problem = sendProblemOf(answered.problem)
  // A laboratory that no longer exists: where everything had been sent, there is nothing to hand in.
  return problem.code === 'unauthorised' && former.unsent === 0 ? undefined : problem
}
