import { useState } from 'preact/hooks'
import type { Check } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import { spanAt } from '../../projections/machines.ts'
import { needsRemark, skipReasons, type SkipReason } from '../../rounds/skip-reasons.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import type { Answering } from './answering.ts'

/** Why a check was not done, out of what can be true of it here and now; the last reason asks for words. */
export const SkipSheet = ({ check, answering, onSkip, onClose }: { check: Check; answering: Answering; onSkip(reason: SkipReason, remark: string): void; onClose(): void }) => {
  const { plan, lab, phone } = useApp()
  const words = useWords()
  const { skip } = words.round
  const [reason, setReason] = useState<SkipReason>()
  const [remark, setRemark] = useState('')
  const [tried, setTried] = useState(false)
  const inForce = plan.value!.plan
  const { machine } = placeOf(inForce, check.station)
  const reasons = skipReasons(inForce, check, spanAt(lab.value.state.machines[machine.id], phone.clock.now()).state)
  const missing = reason !== undefined && needsRemark(reason) && !remark.trim()
  return (
    <Sheet title={skip.title} closeName={words.shell.close} onClose={onClose}>
      <SavingProblem of={answering.saving} />
      <Choices<SkipReason> name={skip.title} of={reasons.map((value) => ({ value, says: skip.reasons[value] }))} value={reason} onChange={setReason} />
      {reason && needsRemark(reason) ? <Field name={skip.remark} value={remark} onChange={setRemark} problem={tried && missing ? skip.remarkMissing : undefined} /> : null}
      <p class="small quiet">{skip.honest}</p>
      <Button
        kind="go"
        notYet={reason ? undefined : skip.title}
        onPress={() => {
          setTried(true)
          if (reason && !missing) onSkip(reason, remark.trim())
        }}
      >
        {skip.save}
      </Button>
    </Sheet>
  )
}
