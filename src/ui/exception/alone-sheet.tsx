import { useState } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { Sheet } from '../parts/sheet.tsx'

/** Poured already, where the plan asks for two: what is in the bath is in the log, with the reason, and stands at sign-off. */
export const AloneSheet = ({ amount, onWhy, onClose }: { amount: string; onWhy(why: string): void; onClose(): void }) => {
  const words = useWords()
  const say = words.exception
  const [why, setWhy] = useState('')
  const [tried, setTried] = useState(false)
  const save = (): void => {
    setTried(true)
    if (why.trim()) onWhy(why.trim())
  }
  return (
    <Sheet title={say.aloneTitle} closeName={words.shell.close} onClose={onClose}>
      <p>{say.aloneMore}</p>
      <Field name={say.aloneWhy} value={why} onChange={setWhy} problem={tried && !why.trim() ? words.now.machine.reasonMissing : undefined} />
      <Button kind="go" onPress={save}>{say.pouredButton(amount)}</Button>
    </Sheet>
  )
}
