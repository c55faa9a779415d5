import { useEffect, useState } from 'preact/hooks'
import type { PlannedDose, Remedy } from '../../corrections/remedy.ts'
import type { Refused } from '../../corrections/say.ts'
import type { LabPlan } from '../../plan/lab-plan.ts'
import type { PersonId } from '../../plan/ids.ts'
import type { Exception } from '../../projections/exceptions.ts'
import { useApp } from '../app-context.ts'
import { AmountStep } from './amount-step.tsx'
import { CautionStep } from './caution-step.tsx'

export interface DoseProps {
  exception: Exception
  remedy: Remedy
  dose: PlannedDose
  plan: LabPlan
  lots: Readonly<Record<string, string>>
  onLots(lots: Readonly<Record<string, string>>): void
  /** Why this is given at all, where the table does not offer it. */
  reason?: string
  /** Its amount is seen from now on. */
  onSeen?(remedy: Remedy): void
  /** It was offered, and is not any more: nothing is poured, but what was poured can be logged. */
  stopped?: Refused | 'notOffered'
}

/** The caution, then the amount, then what was poured. The amount comes out of its seal by the log alone: what was confirmed before a kill stays confirmed. */
export const DoseFlow = (props: DoseProps) => {
  const { lab, person, phone } = useApp()
  const [second, setSecond] = useState<PersonId>()
  const { exception, remedy, dose, plan } = props
  const cautions = exception.cautions.flatMap(({ id }) => {
    const line = lab.value.ledger.line(id)
    return line?.kind === 'caution' ? [line] : []
  })
  const asked = { cautions, person: person.value, now: phone.clock.now(), ...(second ? { secondPerson: second } : {}) }
  const revealed = dose.amount.reveal(asked)
  const isSeen = revealed.ok && !props.stopped
  useEffect(() => {
    if (isSeen) props.onSeen?.(remedy)
  }, [isSeen, remedy.id])
  if (!revealed.ok) return <CautionStep exception={exception} remedy={remedy} dose={dose} needs={revealed.needs} plan={plan} />
  return <AmountStep {...props} asked={asked} revealed={revealed} onSecond={setSecond} />
}
