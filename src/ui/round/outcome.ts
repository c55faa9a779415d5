import type { Check } from '../../plan/check.ts'
import { mixingUntil, phaseAt, rechecksLeft, type Exception } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab-state.ts'
import type { Phone } from '../app-context.ts'
import { seenAt } from '../mixing-seen.ts'
import type { Saved } from './answering.ts'

/** What a saved check means, and so what is offered next. */
export type Outcome =
  | { code: 'in' }
  | { code: 'warn' }
  /** Seen once; a repeat decides. */
  | { code: 'confirm'; exception: Exception }
  /** Holds at once, without a repeat. */
  | { code: 'holdNow'; exception: Exception }
  | { code: 'confirmed'; exception: Exception }
  | { code: 'refuted' }
  | { code: 'closed' }
  | { code: 'stillOut'; exception: Exception }
  | { code: 'whileMixing'; exception: Exception }
  /** One of several re-checks; the answer is judged on all of them. */
  | { code: 'onceMore'; exception: Exception }

export const outcomeOf = (lab: LabState, check: Check, { id, verdict, asked }: Saved, phone: Phone): Outcome => {
  const open = lab.exceptions.open[check.id]
  const exception = open && lab.exceptions.all[open]
  if (!exception) {
    if (asked.as === 'repeat') return { code: 'refuted' }
    if (asked.as === 'recheck') return { code: 'closed' }
    return { code: verdict === 'WARN' ? 'warn' : 'in' }
  }
  if (exception.state === 'toConfirm') return { code: 'confirm', exception }
  if (asked.as === 'repeat') return { code: 'confirmed', exception }
  if (exception.id === id) return { code: 'holdNow', exception }
  const marked = exception.marks.find((mark) => mark.id === id)
  if (marked && (marked.time < mixingUntil(exception) || phaseAt(exception, seenAt(phone, exception)) === 'mixing')) return { code: 'whileMixing', exception }
  if (marked && rechecksLeft(exception) > 0) return { code: 'onceMore', exception }
  return { code: 'stillOut', exception }
}
