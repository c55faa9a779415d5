import { useState } from 'preact/hooks'
import type { MixNow } from '../../projections/mixes.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { HoldToConfirm } from '../parts/hold-to-confirm.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'

/** A mix that went wrong is thrown away with its reason; where it then goes is logged as a run-off. */
export const DiscardBatch = ({ mix }: { mix: MixNow }) => {
  const { router } = useApp()
  const words = useWords()
  const say = words.mixing
  const saving = useSaving()
  const [open, setOpen] = useState(false)
  const [why, setWhy] = useState('')
  const [tried, setTried] = useState(false)
  const discard = async (): Promise<void> => {
    setTried(true)
    if (why.trim() && (await saving.save('mixEnd', { mix: mix.id, how: 'discarded', why: why.trim() }))) router.go('/waste')
  }
  return (
    <>
      <Button kind="plain" wide onPress={() => setOpen(true)}>{say.discard}</Button>
      {open ? (
        <Sheet title={say.discard} closeName={words.shell.close} onClose={() => setOpen(false)}>
          <p>{say.discardMore}</p>
          <SavingProblem of={saving} />
          <Field name={say.discardWhy} value={why} onChange={setWhy} problem={tried && !why.trim() ? words.now.machine.reasonMissing : undefined} />
          <HoldToConfirm done={saving.busy} hint={words.parts.hold} onConfirm={() => void discard()}>{say.discardSave}</HoldToConfirm>
        </Sheet>
      ) : null}
    </>
  )
}
