import { useState } from 'preact/hooks'
import { personOf } from '../../plan/find.ts'
import type { PersonId } from '../../plan/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { SignIn } from '../menu/sign-in.tsx'
import type { NoAnswer } from '../office.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'

const shortest = 8

/** The passphrase by which a supervisor signs. It is kept by the server alone. */
export const PassphraseCard = ({ person }: { person: string }) => {
  const { office, plan, person: me, now } = useApp()
  const all = useWords()
  const words = all.plan.passphrase
  const [passphrase, setPassphrase] = useState('')
  const [refusal, setRefusal] = useState<NoAnswer>()
  const [done, setDone] = useState(false)
  const inForce = plan.value?.plan
  if (!inForce || me.value === null || personOf(inForce, me.value)?.role !== 'supervisor') return null
  const known = personOf(inForce, person as PersonId)
  if (known?.role !== 'supervisor') return known ? null : <p class="small quiet">{words.notYet}</p>
  if ((office.provenUntil.value ?? 0) <= now.value) return <SignIn />
  const set = async (): Promise<void> => {
    const answer = await office.setPassphrase(known.id, { passphrase, name: known.name })
    setRefusal(answer.ok ? undefined : answer.refusal)
    setDone(answer.ok)
    setPassphrase('')
  }
  return (
    <Card title={words.title}>
      <p class="small quiet">{words.more}</p>
      {refusal ? <Banner kind="stop" title={all.enrol.noAnswer(refusal)} /> : null}
      {done ? <Banner title={words.done} /> : null}
      <Field name={words.field} kind="password" value={passphrase} onChange={setPassphrase} hint={all.enrol.first.passphraseHint} autocomplete="new-password" />
      <Button wide notYet={passphrase.length < shortest ? all.enrol.short : undefined} onPress={() => set()}>{words.set}</Button>
    </Card>
  )
}
