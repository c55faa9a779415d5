import { useState } from 'preact/hooks'
import type { MaterialId, StationId } from '../../plan/ids.ts'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'

/** Back to 1, with a reason that stays in the log: the drum was another, the volume was wrong, the analysis was. */
export const ResetSheet = ({ station, material, name, onClose }: { station: StationId; material: MaterialId; name: string; onClose(): void }) => {
  const words = useWords()
  const say = words.response
  const saving = useSaving()
  const [why, setWhy] = useState('')
  const [tried, setTried] = useState(false)
  const reset = async (): Promise<void> => {
    setTried(true)
    if (!why.trim() || !(await saving.save('responseReset', { station, material, why: why.trim() }))) return
    buzz('saved')
    onClose()
  }
  return (
    <Sheet title={say.resetTitle(name)} closeName={words.shell.close} onClose={onClose}>
      <p>{say.resetMore}</p>
      <SavingProblem of={saving} />
      <Field name={say.why} value={why} onChange={setWhy} problem={tried && !why.trim() ? words.now.machine.reasonMissing : undefined} />
      <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void reset()}>{say.resetSave}</HoldToConfirm>
    </Sheet>
  )
}
