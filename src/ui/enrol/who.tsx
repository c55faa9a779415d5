import { useEffect, useState } from 'preact/hooks'
import type { Person } from '../../plan/lab-plan.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { BareScreen } from './bare-screen.tsx'

/** Who has the phone in hand: a name, then its PIN on this phone. The first time one is chosen. */
export const Who = () => {
  const { plan } = useApp()
  const words = useWords().enrol.who
  const [person, setPerson] = useState<Person>()
  if (person) return <Pin person={person} onBack={() => setPerson(undefined)} />
  return (
    <BareScreen title={words.title}>
      <p class="quiet">{words.more}</p>
      <Card>
        <Rows>
          {plan.value?.plan.people.map((it) => (
            <Row key={it.id} what={it.name} under={it.role === 'supervisor' ? words.supervisor : words.operator} onPress={() => setPerson(it)} />
          ))}
        </Rows>
      </Card>
    </BareScreen>
  )
}

const shortest = 4

const Pin = ({ person, onBack }: { person: Person; onBack(): void }) => {
  const app = useApp()
  const all = useWords()
  const words = all.enrol.who
  const { pins } = app.phone
  const [known, setKnown] = useState<boolean>()
  const [pin, setPin] = useState('')
  const [problem, setProblem] = useState<string>()
  const [busy, setBusy] = useState(false)
  useEffect(() => void pins.has(person.id).then(setKnown), [])

  const enter = async (): Promise<void> => {
    if (busy) return
    if (pin.length < shortest) {
      setProblem(words.tooShort)
      return
    }
    setBusy(true)
    try {
      if (!known) await pins.choose(person.id, pin)
      const checked = await pins.check(person.id, pin)
      if (checked.ok) app.person.value = person.id
      else setProblem(checked.waitSeconds > 0 ? words.wait(checked.waitSeconds) : words.wrong(checked.triesLeft))
    } finally {
      setBusy(false)
      setPin('')
    }
  }
  // The store may be busy with what the server sends: nothing is keyed before it is known whether a PIN is chosen or asked for.
  if (known === undefined)
    return (
      <BareScreen title={person.name}>
        <p role="status">{all.shell.loading}</p>
      </BareScreen>
    )
  return (
    <BareScreen title={person.name} next={<Button kind="go" notYet={busy ? all.shell.loading : undefined} onPress={() => enter()}>{words.goOn}</Button>}>
      <p>{known ? words.pin : words.newPin}</p>
      {known ? null : <p class="small quiet">{words.newPinHint}</p>}
      <p class="digits" aria-label={`${words.pin}: ${pin.length}`}>{'•'.repeat(pin.length) || ' '}</p>
      {problem ? <Banner kind="stop" title={problem} /> : null}
      <NumberPad
        value={pin}
        onChange={(value) => {
          setPin(value.replace(/\D/g, ''))
          setProblem(undefined)
        }}
        onEnter={() => void enter()}
        decimals={0}
        longest={12}
        names={{ pad: words.pin, erase: all.pad.erase, point: all.pad.point, minus: all.pad.minus }}
      />
      <Button kind="plain" onPress={onBack}>{all.shell.back}</Button>
    </BareScreen>
  )
}
