import { useState } from 'preact/hooks'
import { useApp, useWords } from '../app-context.ts'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'

/** The passphrase of the person who has the phone, for what only a supervisor may do. */
export const SignIn = () => {
  const { office, person } = useApp()
  const all = useWords()
  const words = all.menu.devicesPage
  const [passphrase, setPassphrase] = useState('')
  const [refusal, setRefusal] = useState<NoAnswer>()
  const [busy, setBusy] = useState(false)
  const prove = async (): Promise<void> => {
    if (person.value === null || busy) return
    setBusy(true)
    const asked = await office.prove(person.value, passphrase)
    setBusy(false)
    setPassphrase('')
    setRefusal(asked.ok ? undefined : asked.refusal)
  }
  return (
    <Card title={words.signIn}>
      <p>{words.signInMore}</p>
      {refusal ? <Banner kind="stop" title={all.enrol.noAnswer(refusal)} /> : null}
      <Field name={words.passphrase} kind="password" value={passphrase} onChange={setPassphrase} autocomplete="current-password" />
      <Button wide notYet={busy ? all.shell.loading : passphrase ? undefined : all.enrol.needed} onPress={() => prove()}>{words.signIn}</Button>
    </Card>
  )
}
