import { useState } from 'preact/hooks'
import type { Exception } from '../../projections/exceptions.ts'
import type { Close } from '../../record/kinds/correction.ts'
import { useWords } from '../app-context.ts'
import { Choices, Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'

type Reason = Exclude<Close['reason'], 'handedOver'>

/** Ends an exception without a reading in limits: a reason, and words where the reason says too little. */
export const CloseSheet = ({ exception, for: known, onDone }: { exception: Exception; for?: Reason; onDone(): void }) => {
  const words = useWords()
  const say = words.exception
  const saving = useSaving()
  const [reason, setReason] = useState<Reason | undefined>(known)
  const [remark, setRemark] = useState('')
  const [tried, setTried] = useState(false)
  const missing = !remark.trim()
  const save = async (): Promise<void> => {
    setTried(true)
    if (!reason || missing) return
    if (await saving.save('close', { exception: exception.id, reason, remark: remark.trim() })) onDone()
  }
  return (
    <Sheet title={say.close} closeName={words.shell.close} onClose={onDone}>
      <p>{say.closeMore}</p>
      <SavingProblem of={saving} />
      <Choices<Reason>
        name={say.close}
        of={(['bathReplaced', 'instrumentFault', 'sampleFault', 'machineStopped', 'other'] as const).map((value) => ({ value, says: say.reasons[value] }))}
        value={reason}
        onChange={setReason}
      />
      <Field name={say.closeRemark} value={remark} onChange={setRemark} problem={tried && (missing || !reason) ? (reason ? words.now.machine.reasonMissing : say.closeReasonMissing) : undefined} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void save()}>{say.closeSave}</HoldToConfirm>
    </Sheet>
  )
}
