import { checkOf } from '../../plan/find.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import { mixingUntil, phaseAt, type Exception } from '../../projections/exceptions.ts'
import { useApp, useWords } from '../app-context.ts'
import { decimalsOf, numberText } from '../format.ts'
import { seenAt } from '../mixing-seen.ts'
import { Row } from '../parts/card.tsx'
import { clockText } from '../parts/timer-ring.tsx'
import { VerdictMark } from '../parts/verdict-mark.tsx'

/** An open exception: what was found, how far it has come, and the way to go on with it. */
export const ExceptionRow = ({ exception, plan }: { exception: Exception; plan: LabPlan }) => {
  const { now, phone } = useApp()
  const words = useWords()
  const check = checkOf(plan, exception.check)
  const mark = exception.marks.at(-1)!
  // Drawn anew with each second of the clock, but the mixing runs on its own.
  now.value
  const phase = phaseAt(exception, seenAt(phone, exception))
  // Not before the repeat: it would be copied.
  const found = phase === 'toConfirm' ? '' : mark.value === undefined || check.kind !== 'reading' ? words.now.notRight : numberText(mark.value, decimalsOf(check.step))
  return (
    <Row
      href={`/exception/${exception.id}`}
      what={<strong>{check.name} {found}</strong>}
      under={phase === 'mixing' ? words.now.phase.mixing(clockText(phone.clock.left(mixingUntil(exception)) / 1000)) : words.now.phase[phase]}
      value={<VerdictMark verdict={mark.verdict} />}
    />
  )
}
