import { useState } from 'preact/hooks'
import type { Skip } from '../../record/kinds/skip.ts'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Choices, Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import type { Answering } from './answering.ts'

type Reason = Skip['reason']

/** Why a check was not done; the last reason asks for words. */
export const SkipSheet = ({ answering, onSkip, onClose }: { answering: Answering; onSkip(reason: Reason, remark: string): void; onClose(): void }) => {
  const words = useWords()
  const { skip } = words.round
  const [reason, setReason] = useState<Reason>()
  const [remark, setRemark] = useState('')
  const [tried, setTried] = useState(false)
  const missing = reason === 'other' && !remark.trim()
  return (
    <Sheet title={skip.title} closeName={words.shell.close} onClose={onClose}>
      <SavingProblem of={answering.saving} />
      <Choices<Reason> name={skip.title} of={(Object.keys(skip.reasons) as Reason[]).map((value) => ({ value, says: skip.reasons[value] }))} value={reason} onChange={setReason} />
      {reason === 'other' ? <Field name={skip.remark} value={remark} onChange={setRemark} problem={tried && missing ? skip.remarkMissing : undefined} /> : null}
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
