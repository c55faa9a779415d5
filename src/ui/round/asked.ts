import type { Check } from '../../plan/check.ts'
import { mixingUntil, phaseAt } from '../../projections/exceptions.ts'
import type { LabState } from '../../projections/lab-state.ts'
import type { EntryId } from '../../record/ids.ts'
import type { Phone } from '../app-context.ts'
import { seenAt } from '../mixing-seen.ts'

/** Why a check is being done: in its turn, to confirm what was seen, or to see how a bath answered. */
export interface Asked {
  as: 'turn' | 'repeat' | 'recheck'
  exception?: EntryId
  /** What the entry says of it. */
  refs: { repeatOf?: EntryId; recheckOf?: EntryId }
  /** A dose is mixing: what is read before does not count. */
  mixingUntil?: number
}

export const askedOf = (lab: LabState, check: Check, phone: Phone): Asked => {
  const id = lab.exceptions.open[check.id]
  const exception = id && lab.exceptions.all[id]
  if (!exception) return { as: 'turn', refs: {} }
  const phase = phaseAt(exception, seenAt(phone, exception))
  if (phase === 'toConfirm') return { as: 'repeat', exception: id, refs: { repeatOf: exception.marks.at(-1)!.id } }
  return { as: 'recheck', exception: id, refs: { recheckOf: id }, ...(phase === 'mixing' ? { mixingUntil: mixingUntil(exception) } : {}) }
}
