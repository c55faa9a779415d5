import type { Ledger } from '../../projections/ledger.ts'
import type { Round } from '../../rounds/kept-round.ts'
import { answer, currentStep, isFinished } from '../../rounds/round.ts'

/**
 * The round with every step answered that the log already answers. The entry is on the disk before the round is: a phone that died
 * between the two must not ask for the same reading twice.
 */
export const reconciled = (round: Round, ledger: Ledger, now: number): Round => {
  let it = round
  while (!isFinished(it)) {
    const step = currentStep(it)
    const known = step.outcome ? undefined : answerInLog(it, step.check, ledger)
    if (!known) return it
    it = answer(it, known.kind === 'skip' ? 'skipped' : 'done', known.id, now)
  }
  return it
}

/** What was noted on paper before the round is found this far back. */
const notedBefore = 12 * 3_600_000

const answerInLog = ({ id, startedAt }: Round, check: string, ledger: Ledger) => {
  const { lines } = ledger
  for (let index = lines.length - 1; index >= 0; index--) {
    const line = lines[index]!
    if (line.time < startedAt - notedBefore) return undefined
    if (line.withdrawnBy) continue
    if (line.kind !== 'reading' && line.kind !== 'look' && line.kind !== 'skip' && line.kind !== 'strip') continue
    if (line.data.round === id && line.data.check === check) return line
  }
  return undefined
}
