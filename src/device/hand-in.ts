import { unsentFile } from '../wire/unsent-file.ts'
import type { ExchangeParts } from './exchange-parts.ts'
import { sendProblemOf, type SendProblem } from './problems.ts'

/**
 * Hands in what this phone could not send while it was another device (its profile was forked, or it was enrolled anew). A file leaves
 * the shelf only when the server has acknowledged every entry in it, or has kept aside what does not fit.
 */
export const handIn = async ({ store, door }: ExchangeParts): Promise<SendProblem | undefined> => {
  let problem: SendProblem | undefined
  for (const name of await store.keys('exports')) {
    const file = unsentFile.safeParse(await store.take('exports', name))
    if (!file.success) {
      problem = { code: 'store', fault: 'corrupt', where: `exports/${name}` }
      continue
    }
    const answered = await door.call('import', { body: file.data, timeoutMs: 120_000 })
    if (!answered.ok) {
      problem = sendProblemOf(answered.problem)
      continue
    }
    const acknowledged = new Set(answered.answer.acks.map(({ id }) => id))
    const isAllThere = file.data.entries.every(({ entry }) => acknowledged.has(entry.id))
    if (isAllThere || answered.answer.error?.code === 'fork') await store.remove('exports', name)
    else problem = { code: 'refused', error: answered.answer.error?.code ?? 'import' }
  }
  return problem
}
