import { useState } from 'preact/hooks'
import type { LabPlan, Person } from '../../plan/lab-plan.ts'
import type { PersonId } from '../../plan/ids.ts'
import { useApp, useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Row, Rows } from '../parts/card.tsx'
import { NumberPad } from '../parts/number-pad.tsx'
import { Sheet } from '../parts/sheet.tsx'

interface SecondPersonSheetProps {
  plan: LabPlan
  /** Only supervisors are asked. */
  supervisorOnly?: boolean
  onPerson(person: PersonId): void
  /** Where nobody else was there, and it is in the bath already. */
  onAlone?(): void
  onClose(): void
}

/** Somebody else looks at the amount and says so with their own PIN, where they have one on this phone. */
export const SecondPersonSheet = ({ plan, supervisorOnly, onPerson, onAlone, onClose }: SecondPersonSheetProps) => {
  const { person, phone } = useApp()
  const words = useWords()
  const say = words.exception
  const [chosen, setChosen] = useState<Person>()
  const [pin, setPin] = useState('')
  const [problem, setProblem] = useState<string>()
  const others = plan.people.filter(({ id, role }) => id !== person.value && (!supervisorOnly || role === 'supervisor'))
  const choose = async (it: Person): Promise<void> => {
    if (await phone.pins.has(it.id)) setChosen(it)
    else setProblem(say.secondHasNoPin(it.name))
  }
  const enter = async (): Promise<void> => {
    if (!chosen) return
    const checked = await phone.pins.check(chosen.id, pin)
    setPin('')
    if (checked.ok) onPerson(chosen.id)
    else setProblem(checked.waitSeconds > 0 ? words.enrol.who.wait(checked.waitSeconds) : words.enrol.who.wrong(checked.triesLeft))
  }
  return (
    <Sheet title={supervisorOnly ? say.supervisor : say.secondPerson} closeName={words.shell.close} onClose={onClose}>
      {problem ? <Banner kind="stop" title={problem} /> : null}
      {chosen ? (
        <>
          <p>{say.secondPin(chosen.name)}</p>
          <p class="digits" aria-label={`${words.enrol.who.pin}: ${pin.length}`}>{'•'.repeat(pin.length) || '\u00a0'}</p>
          <NumberPad value={pin} onChange={(value) => { setPin(value.replace(/\D/g, '')); setProblem(undefined) }} onEnter={() => void enter()} decimals={0} longest={12} names={{ ...words.pad, pad: words.enrol.who.pin }} />
          <Button kind="go" onPress={() => void enter()}>{say.secondConfirms}</Button>
        </>
      ) : (
        <>
          <Rows>{others.map((it) => <Row key={it.id} what={it.name} onPress={() => void choose(it)} />)}</Rows>
          {onAlone ? <Button wide onPress={onAlone}>{say.alone}</Button> : null}
        </>
      )}
    </Sheet>
  )
}
