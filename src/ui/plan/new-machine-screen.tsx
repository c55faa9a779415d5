import { useState } from 'preact/hooks'
import { withTypicalMachine } from '../../plan/template/machine.ts'
import { useApp, useWords } from '../app-context.ts'
import { Button } from '../parts/button.tsx'
import { MachineForm } from './machine-form.tsx'
import { freshMachine, readMachine, type MachineKeyed } from './machine-wanted.ts'
import { partHref } from './place-of.ts'
import { PlanScreen } from './plan-screen.tsx'
import { useNames } from './use-names.ts'

/** One more machine out of typical places, into the draft. */
export const NewMachineScreen = () => {
  const { router } = useApp()
  const words = useWords().plan
  const [keyed, setKeyed] = useState<MachineKeyed>()
  const [tried, setTried] = useState(false)
  const say = useNames()
  return (
    <PlanScreen
      draw={(draft) => {
        const { units } = draft.plan
        const machine = keyed ?? freshMachine('', units)
        const { wanted, bad } = readMachine(machine, units)
        const add = (): void => {
          if (!wanted || !draft.mayEdit) return
          const made = withTypicalMachine(draft.plan, wanted, say)
          draft.change(made.plan)
          router.go(partHref('machines', made.machine), 'replace')
        }
        return { title: words.typical, next: <Button kind="go" notYet={draft.mayEdit ? (wanted ? undefined : words.first.lacking(bad)) : words.lookOnly} onTooEarly={() => setTried(true)} onPress={add}>{words.lists.machines.add}</Button>, body: <MachineForm keyed={machine} units={units} patient={!tried} onChange={setKeyed} /> }
      }}
    />
  )
}
